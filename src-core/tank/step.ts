import { all, ok, within, type Outcome } from '../outcome'
import { lostPerRack } from './decay'
import { volumeOf, waterPerRack } from './model'
import type { RackStep, TankModel, WashModel } from './types'

const MOST_STRENGTH = 1e6
const MOST_DOSE = 1e9

/**
 * One rack: strength `before` in g/L, dose in g. What leaves is worked out from the water that leaves and its mean
 * strength, not from the balance, so that the balance can be tested:
 * volume x (after - before) = dose - lost.
 *
 * Problems: a strength or dose out of range. Source: mass balance (derived); soil and ware take nothing.
 */
export function rackStep(model: WashModel, before: number, dose: number): Outcome<RackStep> {
  const read = all([
    within(before, 0, MOST_STRENGTH, 'strength', 'g/L'),
    within(dose, 0, MOST_DOSE, 'dose', 'g'),
  ])
  if (!read.ok) return read
  const [c, m] = read.value
  return ok(stepUnchecked(model, c, m))
}

/** The same for numbers already checked; used where many racks are worked out in a row. */
export function stepUnchecked(model: WashModel, c: number, m: number): RackStep {
  if (model.kind === 'dump-and-refill') {
    const after = (model.heel * c + m) / volumeOf(model)
    return { after, trough: after, lost: model.fill * c }
  }
  return model.feeding === 'slug' ? slug(model, c, m) : withRinse(model, c, m)
}

/** The dose spread over the water coming in, whose strength is then m/r. */
function withRinse(model: TankModel, c: number, m: number): RackStep {
  const { volume, netWater } = model
  const share = lostPerRack(model)
  const incoming = m / netWater
  const after = c + (incoming - c) * share
  const trough = Math.min(c, after)
  switch (model.closure) {
    case 'continuous':
      // the mean of an exponential approach over the rack, times the water that leaves
      return { after, trough, lost: netWater * incoming + volume * (c - incoming) * share }
    case 'mix-then-overflow':
      return { after, trough, lost: netWater * after }
    case 'displacement': {
      const old = Math.min(volume, netWater)
      return { after, trough, lost: old * c + (netWater - old) * incoming }
    }
  }
}

/** Plain rinse water first, then the whole dose at once. */
function slug(model: TankModel, c: number, m: number): RackStep {
  const { volume, netWater } = model
  const share = lostPerRack(model)
  const trough = c - c * share
  const after = trough + m / volume
  switch (model.closure) {
    case 'continuous':
      return { after, trough, lost: volume * c * share }
    case 'mix-then-overflow':
      return { after, trough, lost: netWater * trough }
    case 'displacement':
      return { after, trough, lost: Math.min(volume, netWater) * c }
  }
}

/** Strength the machine settles at when every rack gets `dose` g: m/r, the mean over a rack whichever way it is fed. */
export const settlesAt = (model: WashModel, dose: number): number => dose / waterPerRack(model)

/**
 * Peak, trough and mean strength once settled, g/L. Fed with the rinse all three are m/r; as a slug the peak is
 * (m/V)/(1 - kept) and the trough what a rack leaves of it.
 * Problems: a dose out of range.
 */
export function settled(
  model: WashModel,
  dose: number,
): Outcome<{ readonly peak: number; readonly trough: number; readonly mean: number }> {
  const read = within(dose, 0, MOST_DOSE, 'dose', 'g')
  if (!read.ok) return read
  const mean = settlesAt(model, dose)
  if (model.kind !== 'tank' || model.feeding !== 'slug') return ok({ peak: mean, trough: mean, mean })
  const once = dose / model.volume
  const lost = lostPerRack(model)
  return ok({ peak: once / lost, trough: (once * (1 - lost)) / lost, mean })
}
