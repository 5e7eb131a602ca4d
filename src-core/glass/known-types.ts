import type { Day, Id, Machine, Site } from '../records'
import { daysBetween } from '../units/days'
import type { VisitResult } from '../worksheet/types'
import type { EvidenceId } from './evidence'
import type { Answer, Finding } from './findings'

export type KnownKind =
  | 'rinse-aid-dose'
  | 'detergent-strength'
  | 'hardness'
  | 'solids'
  | 'rinse-temperature'
  | 'rinse-pressure'
  | 'jets'
  | 'racks-since-fill'

/** Something an earlier visit or the site record says, and what it tells about the glasses. */
export interface KnownFact {
  readonly kind: KnownKind
  /**
   * dose and strength: measured over target, the dose carried on to today by its drift; hardness mg/L as CaCO3; solids
   * mg/L; temperature °C above the data-plate minimum; pressure kPa above it; racks since fill over racks of a fill.
   * Null: seen, not measured.
   */
  readonly value: number | null
  /** day it was found; null: stands in the site record without a day */
  readonly on: Day | null
  readonly daysOld: number | null
  /** false: older than its kind lasts, so it is told and not counted */
  readonly trusted: boolean
  readonly findings: readonly Finding[]
}

/** JUDGEMENT: days for which each kind of fact still says something about today. */
export const LASTS_DAYS: Readonly<Record<KnownKind, number>> = {
  'rinse-aid-dose': 120,
  'detergent-strength': 14,
  hardness: 60,
  solids: 120,
  'rinse-temperature': 60,
  'rinse-pressure': 60,
  jets: 21,
  'racks-since-fill': 0,
}

export interface KnownInput {
  readonly site: Site
  readonly machine: Machine
  /** computed visits, as the worksheet has them */
  readonly visits: readonly VisitResult[]
  readonly today: Day
  /** how fast the flow of a pump falls, part of it per day, where that is known */
  readonly fallPerDay: ReadonlyMap<Id, number>
}

/** A fact with its age; trusted while its kind lasts, and when it stands in the record without a day. */
export function fact(
  kind: KnownKind,
  value: number | null,
  on: Day | null,
  today: Day,
  findings: readonly Finding[],
): KnownFact {
  const daysOld = on === null ? null : Math.max(0, daysBetween(on, today))
  return { kind, value, on, daysOld, trusted: daysOld === null || daysOld <= LASTS_DAYS[kind], findings }
}

export const fromRecord = (evidence: EvidenceId, answer: Answer): Finding => ({
  evidence,
  answer,
  from: 'record',
})

/** One of several outcomes is so (or none, null): the others are not. */
export const oneOf = (items: readonly EvidenceId[], is: EvidenceId | null): readonly Finding[] =>
  items.map((item) => fromRecord(item, item === is ? 'yes' : 'no'))
