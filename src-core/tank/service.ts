import { all, ok, within, type Outcome } from '../outcome'
import { summarize, type StrengthPoint, type StrengthSeries } from './service-summary'
import { settlesAt, stepUnchecked } from './step'
import type { WashModel } from './types'

export interface ServiceInput {
  readonly model: WashModel
  /** g per rack */
  readonly dose: number
  /** g into each fresh fill */
  readonly charge: number
  /** racks in one service day */
  readonly racks: number
  /** drain-and-fills per day, the first fill among them; below one: a fill lasts several days */
  readonly fills: number
  /** relative expanded uncertainty of what the pump feeds, 0.05 for 5 % */
  readonly feedUncertainty?: number
  /** g/L */
  readonly window?: { readonly low: number; readonly high: number } | null
}

/** Three weeks of the busiest machine; more is a slip of the pen. */
export const MOST_RACKS = 20_000

/**
 * Strength of the wash water over a service day: at each drain-and-fill the charge into clean water, then rack after
 * rack. Below one fill a day the whole time between two fills is shown. Fills are spread evenly over the racks. A
 * dump-and-refill machine starts its day with clean water and has no charge.
 *
 * Problems: a number out of range. Source: the steps of `step.ts`; soil takes nothing (assumed).
 */
export function strengthOverService(input: ServiceInput): Outcome<StrengthSeries> {
  const read = all([
    within(input.dose, 0, 1e6, 'dose', 'g'),
    within(input.charge, 0, 1e8, 'charge', 'g'),
    within(input.racks, 1, MOST_RACKS, 'racksPerDay', ''),
    within(input.fills, 0.01, 50, 'wash.drainAndFillsPerDay', ''),
    within(input.feedUncertainty ?? 0, 0, 1e3, 'flow', ''),
  ])
  if (!read.ok) return read
  const { model } = input
  const [dose, charge, racksPerDay, fillsPerDay, relative] = read.value
  const { racks, fillAt } = serviceOf(model, racksPerDay, fillsPerDay)
  const points = walk(model, dose, model.kind === 'tank' ? charge : 0, racks, fillAt, relative)
  return ok(summarize(points, fillAt, settlesAt(model, dose), input.window ?? null))
}

/** The racks shown, and the ones after which a fresh fill happens. */
export function serviceOf(model: WashModel, racksPerDay: number, fillsPerDay: number) {
  const racks = Math.min(MOST_RACKS, Math.max(1, Math.round(racksPerDay / Math.min(1, fillsPerDay))))
  return { racks, fillAt: fillRacks(model, racks, Math.max(1, Math.round(fillsPerDay))) }
}

/** 0 is the start. */
function fillRacks(model: WashModel, racks: number, fills: number): readonly number[] {
  if (model.kind === 'dump-and-refill') return [0]
  const at = Array.from({ length: fills }, (_, k) => Math.round((k * racks) / fills))
  return [...new Set(at)]
}

function walk(
  model: WashModel,
  dose: number,
  charge: number,
  racks: number,
  fillAt: readonly number[],
  relative: number,
): readonly StrengthPoint[] {
  const fills = new Set(fillAt)
  const fresh = model.kind === 'tank' ? charge / model.volume : 0
  const points: StrengthPoint[] = []
  let strength = fresh
  for (let rack = 0; rack <= racks; rack += 1) {
    if (rack > 0) {
      const step = stepUnchecked(model, strength, dose)
      strength = step.after
      points.push(point(rack, strength, step.trough, relative, false))
    }
    if (fills.has(rack)) {
      strength = fresh
      points.push(point(rack, strength, strength, relative, true))
    }
  }
  return points
}

/** Charge and dose come from one pump, so the whole course scales with its flow. */
const point = (
  rack: number,
  strength: number,
  trough: number,
  relative: number,
  fill: boolean,
): StrengthPoint => ({
  rack,
  strength,
  trough,
  low: strength * Math.max(0, 1 - relative),
  high: strength * (1 + relative),
  fill,
})
