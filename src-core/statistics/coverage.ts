import { once } from '../once'
import { combine, effectiveDegreesOfFreedom, type Contribution } from './degrees-of-freedom'
import { coverage95, tCdf } from './distributions'

export interface Coverage {
  /** expanded over standard uncertainty at 95 % */
  readonly factor: number
  /**
   * The degrees of freedom whose t quantile that factor is; null for infinitely many. A function where they are still
   * to be searched for, which costs more than the rest of a result and is seldom looked at.
   */
  readonly degreesOfFreedom: number | null | (() => number | null)
}

/**
 * Coverage factor of a budget at 95 %: t(0.975) at the Welch-Satterthwaite degrees of freedom.
 *
 * That rule breaks down for a spread judged from two values (one degree of freedom): simulated intervals then hold the
 * truth in as few as 87 of 100 cases. With such a line each line is given its own t instead and the products are added
 * in quadrature, which holds it in 95 or more. Two runs are honest, and of little use.
 * `standard`: what the lines combine to, where that is known already.
 * Source: JCGM 100:2008 (GUM) G.3, G.4; the exception is derived here by simulation.
 */
export function coverageOf(lines: readonly Contribution[], standard = combine(lines)): Coverage {
  const scarce = lines.some((line) => line.degreesOfFreedom !== null && line.degreesOfFreedom < 2)
  if (!scarce || !(standard > 0)) {
    const degreesOfFreedom = effectiveDegreesOfFreedom(lines, standard)
    return { factor: coverage95(degreesOfFreedom), degreesOfFreedom }
  }
  const factor = Math.hypot(
    ...lines.map((line) => coverage95(line.degreesOfFreedom) * (line.standard / standard)),
  )
  return { factor, degreesOfFreedom: once(() => degreesFor(factor)) }
}

/** The degrees of freedom at which t(0.975) is `factor`: bisection, the quantile falls as they grow. */
function degreesFor(factor: number): number | null {
  if (tCdf(factor, null) <= 0.975) return null
  let low = 0
  let high = Math.log(1e9)
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2
    if (tCdf(factor, Math.exp(middle)) < 0.975) low = middle
    else high = middle
  }
  return Math.exp(high)
}
