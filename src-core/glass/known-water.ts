import type { Day, EntryOf, ReadingKind } from '../records'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { solidsFromConductivity } from '../water/solids'
import type { EvidenceId } from './evidence'
import type { Finding } from './findings'
import { fact, fromRecord, oneOf, type KnownFact, type KnownInput } from './known-types'
import { latestReading } from './known-readings'

interface Dated {
  readonly value: number
  readonly on: Day | null
}

/** Limits of the water evidence: hardness mg/L as CaCO3, solids mg/L. JUDGEMENT, as the weights. */
const HARD_ABOVE = 60
const SOFT_BELOW = 17
const SALTY_ABOVE = 400
const PURE_BELOW = 100

/**
 * Hardness and solids of the final rinse: measured at a visit, else from the site record. The recorded hardness counts
 * for the rinse only where no softener stands between; solids pass a softener unchanged.
 */
export function waterFacts(input: KnownInput): readonly KnownFact[] {
  const { site, today } = input
  const hardness =
    reading(input, 'hardness-rinse', (entry) => mgPerLitreHard(entry as EntryOf<'hardness'>)) ??
    (site.water.softener === 'none' && site.water.hardness !== null
      ? undated(mgPerLitreHard(site.water.hardness))
      : null)
  const solids =
    reading(input, 'solids-rinse', (entry) => mgPerLitre(entry as EntryOf<'solids'>)) ??
    reading(input, 'conductivity-rinse', (entry) => fromConductivity(entry as EntryOf<'conductivity'>)) ??
    (site.water.solids !== null ? undated(mgPerLitre(site.water.solids)) : null) ??
    (site.water.conductivity !== null ? undated(fromConductivity(site.water.conductivity)) : null)
  const hard =
    hardness === null
      ? null
      : fact('hardness', hardness.value, hardness.on, today, hardnessAlone(hardness.value))
  // a hardness too old to count does not come back in by the solids beside it
  const besides = hardness !== null && hard?.trusted === true ? hardness.value : null
  return [
    ...(hard === null ? [] : [hard]),
    ...(solids === null
      ? []
      : [
          fact('solids', solids.value, solids.on, today, besides === null ? [] : both(besides, solids.value)),
        ]),
  ]
}

const WATER: readonly EvidenceId[] = ['hardness-high', 'hardness-low-tds-high', 'hard-and-tds-low']

const hardnessAlone = (hardness: number): readonly Finding[] =>
  hardness > HARD_ABOVE ? oneOf(WATER, 'hardness-high') : [fromRecord('hardness-high', 'no')]

const both = (hardness: number, solids: number): readonly Finding[] =>
  hardness > HARD_ABOVE
    ? []
    : oneOf(
        WATER,
        hardness < SOFT_BELOW && solids > SALTY_ABOVE
          ? 'hardness-low-tds-high'
          : hardness < SOFT_BELOW && solids < PURE_BELOW
            ? 'hard-and-tds-low'
            : null,
      )

function reading(
  input: KnownInput,
  kind: ReadingKind,
  value: (entry: unknown) => number | null,
): Dated | null {
  const found = latestReading(input, kind)
  const number = found === null ? null : value(found.entry)
  return found === null || number === null ? null : { value: number, on: found.on }
}

const undated = (value: number | null): Dated | null => (value === null ? null : { value, on: null })

const mgPerLitreHard = (entry: EntryOf<'hardness'>): number | null => {
  const typed = read(entry, 'water.hardness', { low: 0 })
  return typed.ok ? inUnit(typed.value, 'mg/L-CaCO3') : null
}

const mgPerLitre = (entry: EntryOf<'solids'>): number | null => {
  const typed = read(entry, 'water.solids', { low: 0 })
  return typed.ok ? inUnit(typed.value, 'mg/L') : null
}

const fromConductivity = (entry: EntryOf<'conductivity'>): number | null => {
  const typed = read(entry, 'water.conductivity', { low: 0 })
  const solids = typed.ok ? solidsFromConductivity(inUnit(typed.value, 'uS/cm')) : null
  return solids?.ok === true ? solids.value.value : null
}
