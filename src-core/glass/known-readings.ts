import type { Day, Entry, NumberText, ReadingKind, SiteCheck } from '../records'
import { doneOn } from '../units/days'
import { UNITS } from '../units/dimensions'
import type { KnownInput } from './known-types'

/** What each kind of reading measures; null: a count. An entry of another dimension is not read. */
const DIMENSION: Readonly<Partial<Record<ReadingKind, string>>> = {
  'hardness-rinse': 'hardness',
  'solids-rinse': 'solids',
  'conductivity-rinse': 'conductivity',
  'rinse-temperature': 'temperature',
  'rinse-pressure': 'pressure',
}

const visitsUntil = ({ site, today }: KnownInput) =>
  site.visits
    .filter((visit) => doneOn(visit.startedAt, today) <= today)
    .toSorted((a, b) => (a.startedAt < b.startedAt ? -1 : 1))

/** The latest reading of a kind at the machine that holds an entry of the right dimension. */
export function latestReading(
  input: KnownInput,
  kind: ReadingKind,
): { readonly entry: Entry; readonly on: Day } | null {
  for (const visit of visitsUntil(input).toReversed())
    for (const reading of visit.readings.toReversed())
      if (
        reading.machineId === input.machine.id &&
        reading.kind === kind &&
        reading.value !== null &&
        UNITS[reading.value.unit].dimension === DIMENSION[kind]
      )
        return { entry: reading.value, on: doneOn(reading.at, input.today) }
  return null
}

/** The latest count of a kind at the machine. */
export function latestCount(
  input: KnownInput,
  kind: ReadingKind,
): { readonly count: NumberText; readonly on: Day } | null {
  for (const visit of visitsUntil(input).toReversed())
    for (const reading of visit.readings.toReversed())
      if (reading.machineId === input.machine.id && reading.kind === kind && reading.count !== null)
        return { count: reading.count, on: doneOn(reading.at, input.today) }
  return null
}

/** The latest answer to a site check at the machine that is not "not checked". */
export function latestCheck(
  input: KnownInput,
  check: SiteCheck,
): { readonly ok: boolean; readonly on: Day } | null {
  for (const visit of visitsUntil(input).toReversed())
    for (const answer of visit.checks)
      if (answer.machineId === input.machine.id && answer.check === check && answer.answer !== 'not-checked')
        return { ok: answer.answer === 'ok', on: doneOn(visit.startedAt, input.today) }
  return null
}
