import { oncePer } from '../once'
import { ok, type Outcome } from '../outcome'
import type { Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { rectangular } from '../statistics/rectangular'
import { readNumber } from '../units/read'
import type { InstrumentLimits } from './instrument-limits'
import type { TubeFactor } from './tube-factor'
import type { VolumeDoubt } from './types'

/** An eye can split one graduation in about five: common practice, no source. */
const FINEST_SPLIT = 5

export interface DoubtInputs {
  readonly limits: InstrumentLimits
  readonly tube: TubeFactor
  /** of the product; used for weighed runs only */
  readonly density: Estimate<'g/mL'> | null
  /** raw readings of all runs, to see how finely they were read; none for a plan */
  readonly readings: readonly number[]
  /** 1 when an empty cup was filled, else 2 */
  readonly readingsPerRun: number
  readonly rollers: Pump['rollers']
}

/**
 * Standard uncertainties of the volume of one run. A reading lies within half a graduation (rectangular); two
 * readings add in quadrature. Grams become mL by the density, scale divisions of a cylinder true mL by the tube factor.
 *
 * Problems: those of `readNumber` for the rollers.
 */
export function volumeDoubt(inputs: DoubtInputs): Outcome<VolumeDoubt> {
  const { limits, tube, density } = inputs
  const pulses = pulsesPerMinute(inputs.rollers)
  if (!pulses.ok) return pulses
  const perUnit = limits.measures === 'mass' ? 1 / (density?.value ?? 1) : tube.factor
  const step = limits.graduation
  const perStep = Math.sqrt(inputs.readingsPerRun) * rectangular(0.5) * perUnit
  const split = step !== null && onMarks(inputs.readings, step) ? 1 : FINEST_SPLIT
  const weighed = limits.measures === 'mass' && density !== null
  return ok({
    reading: step === null ? null : step * perStep,
    unresolved: step === null ? 0 : (step / (limits.measures === 'mass' ? 1 : split)) * perStep,
    instrument: {
      source: weighed ? 'scale' : 'cylinder-tolerance',
      standard: rectangular(limits.tolerance) * perUnit,
    },
    factors: weighed
      ? [{ source: 'density', relative: density.standard / density.value, sign: -1 }]
      : [{ source: 'tube-factor', relative: tube.standard / tube.factor }],
    pulsesPerMinute: pulses.value,
  })
}

/** Roller passages per minute, null when the pump head is not described. */
export const pulsesPerMinute = (rollers: Pump['rollers']): Outcome<number | null> =>
  rollers === null ? NO_PULSES : pulsesOf(rollers)

const NO_PULSES = ok(null)
const pulsesOf = oncePer((rollers: NonNullable<Pump['rollers']>): Outcome<number> => {
  const turns = readNumber(rollers.perMinute, 'pump.rollers.perMinute', { above: 0, high: 10_000 })
  if (!turns.ok) return turns
  const count = readNumber(rollers.count, 'pump.rollers.count', { low: 1, high: 20 })
  return count.ok ? ok(turns.value * count.value) : count
})

/** Whether every reading stands on a mark: then it was read to the nearest mark, not between two. */
const onMarks = (readings: readonly number[], step: number): boolean =>
  readings.every((reading) => Math.abs(reading / step - Math.round(reading / step)) < 1e-6)
