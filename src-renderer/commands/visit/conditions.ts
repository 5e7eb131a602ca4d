import type { CheckAnswer, Entry, Id, NumberText, Reading, ReadingKind, Site } from '#core/records/index'
import { changeOpenVisit, replaceOne, without, type AtVisit, type Stamp } from './open-visit'
import { sameData } from './same-data'

/** Answers one site check on one machine; a later answer takes the place of an earlier one. */
export const answerCheck = (site: Site, at: AtVisit, answer: CheckAnswer): Site =>
  answerChecks(site, at, [answer])

/** Answers several checks at once, as when the rep has looked at a whole group. */
export function answerChecks(site: Site, at: AtVisit, answers: readonly CheckAnswer[]): Site {
  return changeOpenVisit(site, at.visitId, (visit) => {
    const checks = answers.reduce((rows, answer) => withAnswer(rows, answer), visit.checks)
    return sameData(checks, visit.checks) ? visit : { ...visit, checks }
  })
}

const sameCheck = (a: CheckAnswer, b: CheckAnswer): boolean =>
  a.machineId === b.machineId && a.check === b.check

function withAnswer(rows: readonly CheckAnswer[], answer: CheckAnswer): readonly CheckAnswer[] {
  return rows.some((row) => sameCheck(row, answer))
    ? rows.map((row) => (sameCheck(row, answer) ? answer : row))
    : [...rows, answer]
}

export interface ReadingInput extends AtVisit, Stamp {
  readonly machineId: Id
  readonly kind: ReadingKind
  readonly value: Entry | null
  readonly count: NumberText | null
}

/** Writes a reading down. */
export function addReading(site: Site, input: ReadingInput): Site {
  const { id, at, machineId, kind, value, count } = input
  const reading: Reading = { id, machineId, kind, at, value, count }
  return changeOpenVisit(site, input.visitId, (visit) => ({
    ...visit,
    readings: [...visit.readings, reading],
  }))
}

/** The one reading of a kind at a machine in this visit: written, corrected, or taken out when it holds nothing. */
export function writeReading(site: Site, input: ReadingInput): Site {
  const visit = site.visits.find((one) => one.id === input.visitId)
  const known = visit?.readings.find(
    (reading) => reading.machineId === input.machineId && reading.kind === input.kind,
  )
  if (known === undefined)
    return input.value === null && input.count === null ? site : addReading(site, input)
  const at = { visitId: input.visitId, readingId: known.id }
  return input.value === null && input.count === null
    ? removeReading(site, at)
    : editReading(site, at, { value: input.value, count: input.count })
}

/** Corrects a reading; when it was taken stays. */
export const editReading = (
  site: Site,
  at: AtVisit & { readonly readingId: Id },
  change: { readonly value: Entry | null; readonly count: NumberText | null },
): Site =>
  changeOpenVisit(site, at.visitId, (visit) => {
    const readings = replaceOne(
      visit.readings,
      (reading) => reading.id === at.readingId,
      (reading) => ({ ...reading, ...change }),
    )
    return readings === visit.readings ? visit : { ...visit, readings }
  })

export const removeReading = (site: Site, at: AtVisit & { readonly readingId: Id }): Site =>
  changeOpenVisit(site, at.visitId, (visit) => {
    const readings = without(visit.readings, (reading) => reading.id === at.readingId)
    return readings === visit.readings ? visit : { ...visit, readings }
  })

export interface CautionInput extends AtVisit {
  readonly caution: string
  readonly productId: Id | null
  readonly at: string
}

/** Logs that a caution was read. Once per caution and product in a visit: the first time counts. */
export const acknowledgeCaution = (site: Site, input: CautionInput): Site =>
  changeOpenVisit(site, input.visitId, (visit) => {
    const { caution, productId, at } = input
    const known = visit.cautions.some((row) => row.caution === caution && row.productId === productId)
    return known ? visit : { ...visit, cautions: [...visit.cautions, { caution, productId, at }] }
  })
