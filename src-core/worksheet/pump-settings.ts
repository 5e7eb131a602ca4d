import { dosePerRack } from '../dose/concentration'
import { doseSeconds } from '../dose/dose-seconds'
import { all, chain } from '../outcome'
import type { Id, Pump } from '../records'
import type { PumpSetting } from '../spend/types'
import type { PumpVisit, TestResult } from './types'

/**
 * The last known flow of every pump of today's set-up, with the dose it gives at today's seconds per rack. The last
 * test that could be worked out counts: one still being made does not put the month's figures out.
 */
export function pumpSettings(
  pumps: readonly Pump[],
  visits: readonly { readonly pumps: readonly PumpVisit[] }[],
): readonly PumpSetting[] {
  const last = new Map<Id, TestResult>()
  for (const visit of visits)
    for (const pump of visit.pumps)
      for (const test of pump.tests) if (test.flow.ok) last.set(pump.pumpId, test)
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
