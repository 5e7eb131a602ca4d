import type { Id, Site } from '#core/records/index'
import type { TestResult, Worksheet } from '#core/worksheet/types'
import { dayIn } from '../../state/clock.svelte'
import { dayWords } from '../../state/days-words'

export interface FlowPoint {
  readonly visitId: Id
  readonly day: string
  /** mL/min; null when that test gave no flow */
  readonly found: number | null
  readonly left: number | null
}

/** As-found and as-left flow of one pump at each visit that tested it, oldest first. mL/min. */
export function flowHistory(site: Site, worksheet: Worksheet, pumpId: Id): readonly FlowPoint[] {
  return worksheet.visits.flatMap((visit) => {
    const pump = visit.pumps.find((candidate) => candidate.pumpId === pumpId)
    if (pump === undefined || pump.asFound === null) return []
    return [
      {
        visitId: visit.visitId,
        day: dayIn(new Date(visit.startedAt), site.timeZone),
        found: flowOf(pump.asFound),
        left: pump.asLeft === pump.asFound ? null : flowOf(pump.asLeft),
      },
    ]
  })
}

const flowOf = (test: TestResult | null): number | null =>
  test !== null && test.flow.ok ? test.flow.value.value : null

/** What the flows say, in one sentence. */
export function flowFinding(
  name: string,
  points: readonly FlowPoint[],
  show: (flow: number) => string,
): string {
  const last = points.at(-1)
  const first = points[0]
  if (last === undefined || first === undefined) return `${name}: no flow measured yet.`
  const found = last.found === null ? 'not measured' : `found at ${show(last.found)}`
  const left = last.left === null ? ' and left there' : `, left at ${show(last.left)}`
  const span = points.length === 1 ? 'one visit' : `${points.length} visits since ${dayWords(first.day)}`
  return `${name}, ${span}: last ${found}${left}.`
}
