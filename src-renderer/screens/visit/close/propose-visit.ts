import type { NextVisit } from '#core/drift/types'
import type { Day } from '#core/records/index'
import { addDays } from '#core/units/days'
import { pumpTrend } from '#core/worksheet/pump-trend'
import type { SiteSession } from '../../../state/site-session.svelte'

export interface ProposedVisit {
  readonly on: Day
  readonly why: string
}

const WHY: Record<NextVisit['reason'], (pump: string) => string> = {
  usual: () => 'the usual interval of this site',
  'settling-in': (pump) => `${pump} has a new tube, and a new tube changes most in its first week`,
  'leaves-window': (pump) => `${pump} may have left its window by then`,
  'already-out': (pump) => `${pump} is outside its window`,
}

/** The day to come again: the soonest that any pump asks for, else the usual interval; null when nothing says one. */
export function proposeVisit(
  session: Pick<SiteSession, 'site' | 'worksheet' | 'products' | 'instruments' | 'today'>,
): ProposedVisit | null {
  const { site, worksheet, products, instruments, today } = session
  const asked = site.machines.flatMap((machine) =>
    machine.pumps.flatMap((pump) => {
      const trend = pumpTrend(site, worksheet, { products, instruments }, pump.id)
      const next = trend.ok ? trend.value.drift.nextVisit : null
      // a day that has passed asks for a visit that is being made now
      return next === null || next.on <= today ? [] : [{ pump, next }]
    }),
  )
  const soonest = asked.toSorted((a, b) => (a.next.on < b.next.on ? -1 : a.next.on > b.next.on ? 1 : 0))[0]
  if (soonest !== undefined) return { on: soonest.next.on, why: WHY[soonest.next.reason](soonest.pump.name) }
  const every = Math.round(Number(site.visitEveryDays ?? ''))
  return every >= 1 && every <= 1000 ? { on: addDays(today, every), why: WHY.usual('') } : null
}
