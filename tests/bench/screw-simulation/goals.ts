import type { Bound } from './best-possible'
import { PERCENTILES, type Summary } from './summary'

/** A goal of the advice, what came out, and why it cannot be had where it cannot. */
export interface Goal {
  readonly text: string
  readonly found: string
  readonly state: 'met' | 'missed' | 'out of reach'
}

export const percent = (share: number): string => `${(100 * share).toFixed(1)} %`

export const atLeast = (text: string, share: number, least: number): Goal => ({
  text,
  found: percent(share),
  state: share >= least ? 'met' : 'missed',
})

export const atMost = (text: string, value: number, most: number, found: string): Goal => ({
  text,
  found,
  state: value <= most ? 'met' : 'missed',
})

/** A share that a bound may put out of reach: of anybody at all, or of anybody who has to prove it. */
export function bounded(text: string, share: number, least: number, bound: Bound): Goal {
  if (share >= least) return { text, found: percent(share), state: 'met' }
  const proved = bound.proved ?? bound.share
  return {
    text,
    found: `${percent(share)}; the best move there is proves ${percent(proved)}, and no more than ${percent(bound.share)} could be in without proof`,
    state: Math.min(bound.share, proved) < least ? 'out of reach' : 'missed',
  }
}

/**
 * Beaten at every percentile, or level where fewer turns are impossible: a pump not found in the window takes one, and
 * no more than `oneMove` of all can be settled in one by anybody.
 */
export function beaten(ours: Summary, other: Summary, oneMove: Bound): Goal {
  const least = (p: number): number =>
    p <= 100 * (ours.within[0] ?? 0) ? 0 : p > 100 * (oneMove.share + 2 * oneMove.standardError) ? 2 : 1
  const at = PERCENTILES.map((p, i) => {
    const [we, they] = [ours.percentiles[i] ?? Infinity, other.percentiles[i] ?? Infinity]
    return { p, state: we < they ? 'beaten' : we > they ? 'lost' : we <= least(p) ? 'least' : 'level' }
  })
  const list = (state: string): string =>
    at
      .filter((one) => one.state === state)
      .map((one) => `p${String(one.p)}`)
      .join(' ')
  const parts = [
    ['beaten', 'beaten at'],
    ['least', 'level at the fewest turns possible at'],
    ['level', 'level at'],
    ['lost', 'behind at'],
  ].flatMap(([state = '', words = '']) => (list(state) === '' ? [] : [`${words} ${list(state)}`]))
  return {
    text: `${other.name}: beaten at every percentile`,
    found: parts.join(', '),
    state: at.some((one) => one.state === 'lost' || one.state === 'level')
      ? 'missed'
      : at.some((one) => one.state === 'least')
        ? 'out of reach'
        : 'met',
  }
}
