/**
 * A straight line of flow against screw position with both level and slope uncertain: a normal belief about the flow
 * here (mL/min) and about what one more turn does (mL/min per turn), with their covariance.
 */
export interface Line {
  readonly flow: number
  readonly gain: number
  readonly flowVariance: number
  readonly gainVariance: number
  readonly covariance: number
}

/** Wide enough to say nothing about the flow beforehand; common choice for a small pump, mL/min squared. */
const KNOWS_NOTHING = 1e4

/** The belief before any measurement: no view of the flow, a view of the gain. mL/min and mL/min per turn. */
export const startLine = (flow: number, standard: number, gain: number, gainStandard: number): Line => ({
  flow,
  gain,
  flowVariance: Math.max(KNOWS_NOTHING, 100 * standard * standard),
  gainVariance: gainStandard * gainStandard,
  covariance: 0,
})

/**
 * The belief after a move of `turns` (clockwise positive), before it is measured. `bend` is the standard deviation of
 * the relative change of gain over one turn; the gain is taken to change evenly along the way, so half of its change
 * acts on the flow. 0 keeps the line straight.
 */
export function moveLine(line: Line, turns: number, bend: number): Line {
  const change = (bend * line.gain * turns) ** 2
  return {
    flow: line.flow + line.gain * turns,
    gain: line.gain,
    flowVariance:
      line.flowVariance +
      2 * turns * line.covariance +
      turns * turns * line.gainVariance +
      (change * turns * turns) / 4,
    gainVariance: line.gainVariance + change,
    covariance: line.covariance + turns * line.gainVariance + (change * turns) / 2,
  }
}

/**
 * The belief after measuring `flow` here with standard uncertainty `standard`: Bayesian linear regression, one row at
 * a time. Source: normal prior, normal likelihood with known variance, as in Gelman et al., Bayesian Data Analysis,
 * ch. 14; the gain form K = P h / S is that of the Kalman filter.
 */
export function observeLine(line: Line, flow: number, standard: number): Line {
  const total = line.flowVariance + standard * standard
  if (!(total > 0)) return line
  const surprise = flow - line.flow
  const kFlow = line.flowVariance / total
  const kGain = line.covariance / total
  return {
    flow: line.flow + kFlow * surprise,
    gain: line.gain + kGain * surprise,
    flowVariance: (standard * standard * line.flowVariance) / total,
    gainVariance: Math.max(0, line.gainVariance - kGain * line.covariance),
    covariance: line.covariance * (1 - kFlow),
  }
}

/** Log of the chance density of measuring `flow` here; what two beliefs are compared by. */
export function logLikelihood(line: Line, flow: number, standard: number): number {
  const total = Math.max(Number.MIN_VALUE, line.flowVariance + standard * standard)
  return -0.5 * (Math.log(2 * Math.PI * total) + (flow - line.flow) ** 2 / total)
}
