import { all, ok, within, type Outcome } from '../outcome'
import { WAIT_CONSTANTS } from './decay'

/**
 * Strength leaving a mixed booster `racks` racks after the dose was changed from `before` to `after` (any one unit):
 * after + (before - after) exp(-n r / Vb). `volume` and `rinse` in litres.
 *
 * Problems: a number out of range. Source: stirred-tank equation (derived).
 */
export function boosterStrength(input: {
  readonly volume: number
  readonly rinse: number
  readonly before: number
  readonly after: number
  readonly racks: number
}): Outcome<number> {
  const read = all([
    within(input.volume, 0, 100_000, 'machine.boosterVolume', 'L'),
    within(input.rinse, 0.001, 100_000, 'machine.rinse', 'L'),
    within(input.before, 0, 1e9, 'before', ''),
    within(input.after, 0, 1e9, 'after', ''),
    within(input.racks, 0, 1e9, 'racks', ''),
  ])
  if (!read.ok) return read
  const [volume, rinse, before, after, racks] = read.value
  if (volume === 0) return ok(racks > 0 ? after : before)
  return ok(after + (before - after) * Math.exp((-racks * rinse) / volume))
}

/**
 * Racks to run before glasses are judged after a change of a rinse product: 3 booster volumes of water, at least one.
 * Litres. Problems: a number out of range. Source: 95 % of a change is in after three time constants (derived).
 */
export function boosterRacks(volume: number, rinse: number): Outcome<number> {
  const read = all([
    within(volume, 0, 100_000, 'machine.boosterVolume', 'L'),
    within(rinse, 0.001, 100_000, 'machine.rinse', 'L'),
  ])
  if (!read.ok) return read
  return ok(Math.max(1, Math.ceil((WAIT_CONSTANTS * read.value[0]) / read.value[1] - 1e-9)))
}
