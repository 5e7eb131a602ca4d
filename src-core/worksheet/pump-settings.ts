import { dosePerRack } from '../dose/concentration'
import { doseSeconds } from '../dose/dose-seconds'
import { all, chain } from '../outcome'
import type { Id, Pump, Visit } from '../records'
import type { PumpSetting } from '../spend/types'
import type { PumpVisit, TestResult } from './types'

export interface TestedVisit {
  readonly pumps: readonly PumpVisit[]
  /** its record, where that is at hand: a visit without work on the pumps in question is then not worked out */
  readonly visit?: Pick<Visit, 'work'>
}

/**
 * The last known flow of every pump of today's set-up, with the dose it gives at today's seconds per rack. The last
 * test that could be worked out counts: one still being made does not put the month's figures out.
 */
export function pumpSettings(pumps: readonly Pump[], visits: readonly TestedVisit[]): readonly PumpSetting[] {
  const last = lastTests(
    visits,
    pumps.map((pump) => pump.id),
  )
  return pumps.map((pump) => {
    const flow = last.get(pump.id)?.flow ?? null
    return {
      pumpId: pump.id,
      flow,
      dose:
        flow === null
          ? null
          : chain(all([flow, doseSeconds(pump)]), ([q, seconds]) => dosePerRack(q, seconds)),
    }
  })
}

/** Looks back from the newest visit, and no further than the last of the pumps was found. */
function lastTests(visits: readonly TestedVisit[], pumpIds: readonly Id[]): ReadonlyMap<Id, TestResult> {
  const wanted = new Set(pumpIds)
  const last = new Map<Id, TestResult>()
  for (const visit of visits.toReversed()) {
    if (wanted.size === 0) break
    if (visit.visit?.work.every((work) => !wanted.has(work.pumpId)) === true) continue
    for (const pump of visit.pumps.toReversed()) {
      const test = wanted.has(pump.pumpId) ? pump.tests.findLast((one) => one.flow.ok) : undefined
      if (test === undefined) continue
      last.set(pump.pumpId, test)
      wanted.delete(pump.pumpId)
    }
  }
  return last
}
