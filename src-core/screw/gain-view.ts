import { RECORD_IS_OLD, UNKNOWN_GAIN } from './limits'
import type { GainPrior } from './types'

/** One narrow view of the gain, mL/min per turn, and its share of belief. */
export interface GainNode {
  readonly gain: number
  readonly standard: number
  readonly weight: number
}

/** Shares of the target per turn beyond which a record is a slip of the pen, and how narrow or wide it may claim to be. */
const PLAUSIBLE = { low: 0.005, high: 50 } as const
const NARROWEST = 0.01
const WIDEST = 2

/**
 * The belief about the gain before this visit, as narrow normal pieces on a logarithmic scale, so that it stays above
 * zero however wide it is. `scale`: the target flow, mL/min. With a record: a log-normal of its mean and spread, and a
 * little of the unknown in case the record is old. Without: every factor between the limits alike.
 */
export function gainView(scale: number, prior: GainPrior | null): readonly GainNode[] {
  const { low, high } = UNKNOWN_GAIN
  const unknown = pieces(Math.log(low * scale), Math.log(high * scale), 12, () => 1)
  if (prior === null || prior.from === 'none') return unknown
  if (!(prior.gain > scale * PLAUSIBLE.low && prior.gain < scale * PLAUSIBLE.high)) return unknown
  const relative = Math.min(WIDEST, Math.max(NARROWEST, prior.standard / prior.gain))
  const variance = Math.log(1 + relative * relative)
  const spread = Math.sqrt(variance)
  const middle = Math.log(prior.gain) - variance / 2
  const recorded = pieces(middle - 2.4 * spread, middle + 2.4 * spread, 9, (at) =>
    Math.exp(-((at - middle) ** 2) / (2 * variance)),
  )
  return [...share(recorded, 1 - RECORD_IS_OLD), ...share(unknown, RECORD_IS_OLD)]
}

/** Even pieces between two logarithms, each wide enough to meet its neighbours. */
function pieces(
  from: number,
  to: number,
  count: number,
  density: (logGain: number) => number,
): readonly GainNode[] {
  const step = (to - from) / (count - 1)
  const nodes = Array.from({ length: count }, (_, i) => {
    const at = from + i * step
    const gain = Math.exp(at)
    return { gain, standard: 0.6 * step * gain, weight: density(at) }
  })
  return share(nodes, 1)
}

function share(nodes: readonly GainNode[], of: number): readonly GainNode[] {
  const total = nodes.reduce((sum, node) => sum + node.weight, 0)
  return nodes.map((node) => ({ ...node, weight: (node.weight / total) * of }))
}
