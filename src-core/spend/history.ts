import type { Day, Id } from '../records'
import { dayNumberOf } from '../units/days'
import type { PumpDose, PumpSetting } from './types'

/** Visits of one pump that tested it, in order of day; of two on one day the later in the list counts last. */
export const testsOf = (doses: readonly PumpDose[], pumpId: Id): readonly PumpDose[] =>
  doses.filter((dose) => dose.pumpId === pumpId && dose.left !== null).sort(byDay)

const byDay = (a: PumpDose, b: PumpDose): number => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)

/** The setting a pump ran at from a day on: what the last test on or before it left. Null before the first. */
export function settingOn(tests: readonly PumpDose[], day: Day): PumpSetting | null {
  const last = tests.filter((test) => test.on <= day).at(-1)
  return last === undefined ? null : { pumpId: last.pumpId, dose: last.left, flow: last.flowLeft }
}

/** A stretch of days `from` up to, not including, `to` (day numbers) at one setting. */
export interface Segment {
  readonly from: number
  readonly to: number
  readonly setting: PumpSetting | null
}

/** Cuts the days between at the visits that set the pump. The first segment has no setting when no test came before. */
export function segmentsOf(tests: readonly PumpDose[], from: number, to: number): readonly Segment[] {
  const cuts = tests.map((test) => dayNumberOf(test.on)).filter((day) => day > from && day < to)
  const edges = [from, ...new Set(cuts), to]
  return edges.slice(0, -1).map((start, index) => {
    const before = tests.filter((test) => dayNumberOf(test.on) <= start).at(-1)
    return {
      from: start,
      to: edges[index + 1] ?? to,
      setting:
        before === undefined ? null : { pumpId: before.pumpId, dose: before.left, flow: before.flowLeft },
    }
  })
}
