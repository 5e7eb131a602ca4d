import type { Entry, Machine, SiteCheck } from '../records'
import { limitsOfMachine } from '../sanitize/limits-of-machine'
import type { CodeLimit, CodeLimits, LimitFigure } from '../sanitize/types'
import type { Dimension } from '../units/dimensions'
import { SITE_CHECKS, type SiteCheckText } from './site-check-table'

/** A figure the answer is held against; from the machine's own plate where that is recorded. */
export interface SiteCheckReference {
  readonly bound: 'min' | 'max'
  /** the same limit in each unit it is printed in, the governing one first */
  readonly figures: readonly (LimitFigure | Entry)[]
  readonly from: 'data-plate' | CodeLimit['how']
  readonly source: string
}

export interface SiteCheckRow extends SiteCheckText {
  readonly check: SiteCheck
  readonly references: readonly SiteCheckReference[]
  /** what the measured value is, when one is asked for */
  readonly measures: Extract<Dimension, 'pressure' | 'temperature' | 'length'> | null
}

const MEASURES: { readonly [C in SiteCheck]?: SiteCheckRow['measures'] } = {
  'supply-pressure': 'pressure',
  'rinse-pressure': 'pressure',
  'rinse-temperature': 'temperature',
  'wash-temperature': 'temperature',
  'drain-air-gap': 'length',
}

/**
 * The conditions that apply to a machine, in the order of the table, each with its figures: the machine's data plate
 * first, then the code limits in force. Conditions that mean nothing for a machine are left out: a rinse pressure on a
 * dump-and-refill machine (its rinse is pumped) unless its plate states one, a drain hose on a conveyor, proof of
 * delivery where neither detergent nor sanitizer is dosed.
 */
export const siteChecks = (machine: Machine, limits: CodeLimits): readonly SiteCheckRow[] =>
  (Object.keys(SITE_CHECKS) as SiteCheck[])
    .filter((check) => appliesTo(check, machine))
    .map((check) => ({
      ...SITE_CHECKS[check],
      check,
      references: references(check, machine, limits),
      measures: MEASURES[check] ?? null,
    }))

/** The conditions whose `not ok` refuses an adjustment on this machine. */
export const blockingChecks = (machine: Machine): readonly SiteCheck[] =>
  (Object.keys(SITE_CHECKS) as SiteCheck[]).filter(
    (check) => SITE_CHECKS[check].blocks && appliesTo(check, machine),
  )

function appliesTo(check: SiteCheck, machine: Machine): boolean {
  const plate = machine.dataPlate
  const conveyor = machine.class === 'conveyor-single-tank' || machine.class === 'conveyor-multi-tank'
  const dumps = machine.wash.kind === 'dump-and-refill'
  switch (check) {
    case 'rinse-pressure':
      return !dumps || plate.rinsePressureMin !== null || plate.rinsePressureMax !== null
    case 'rinse-temperature':
      return (
        machine.sanitizing === 'hot-water' ||
        plate.rinseTemperatureMin !== null ||
        plate.rinseTemperatureMax !== null
      )
    case 'drain-loop':
      return !conveyor
    case 'high-limit-thermostats':
      return machine.sanitizing === 'hot-water' || !dumps
    case 'proof-of-delivery':
      return machine.pumps.some((pump) => pump.role === 'detergent' || pump.role === 'sanitizer')
    case 'primed-after-change':
    case 'containers-low':
    case 'pick-up-and-cap':
    case 'tubes-as-installed':
    case 'rack-signal':
    case 'label-matches-record':
      return machine.pumps.length > 0
    default:
      return true
  }
}

function references(check: SiteCheck, machine: Machine, limits: CodeLimits): readonly SiteCheckReference[] {
  const plate = machine.dataPlate
  const own = limitsOfMachine(machine, limits)
  switch (check) {
    case 'supply-pressure':
      return [fromCode(limits['supply-pressure-min']), fromCode(limits['supply-pressure-max'])]
    case 'rinse-pressure':
      return [
        ...pick('min', plate.rinsePressureMin, own.rinsePressureMin),
        ...pick('max', plate.rinsePressureMax, own.rinsePressureMax),
      ]
    case 'rinse-temperature':
      return [
        ...pick('min', plate.rinseTemperatureMin, own.rinseTemperatureMin),
        ...pick('max', plate.rinseTemperatureMax, own.rinseTemperatureMax),
      ]
    case 'wash-temperature':
      return pick('min', plate.washTemperatureMin, own.washTemperatureMin)
    case 'drain-air-gap':
      return [fromCode(limits['drain-air-gap-min'])]
    default:
      return []
  }
}

const pick = (
  bound: 'min' | 'max',
  plate: Entry | null,
  limit: CodeLimit | null,
): readonly SiteCheckReference[] => {
  if (plate !== null)
    return [{ bound, figures: [plate], from: 'data-plate', source: 'the machine’s data plate' }]
  return limit === null ? [] : [fromCode(limit)]
}

const fromCode = (limit: CodeLimit): SiteCheckReference => ({
  bound: limit.bound,
  figures: limit.figures,
  from: limit.how,
  source: limit.source,
})
