import type { Day } from '../records'
import { addDays, daysBetween } from '../units/days'
import { SETTLING_DAYS, SOONEST_DAYS, USUAL_DAYS } from './limits'
import type { Leaving, NextVisit } from './types'

/**
 * The day to come again, counted from the last test: a week after a new tube, before the
 * flow leaves its window with a chance of one in six, though not within the week, tomorrow when it is outside, else
 * as the site is used to (`everyDays`; four weeks where it says nothing).
 */
export function nextVisitOf(
  lastTest: Day,
  facts: {
    readonly tubeFittedOn: Day | null
    readonly leaving: Leaving | null
    readonly everyDays: number | null
  },
): NextVisit {
  const usual = Math.max(1, Math.round(facts.everyDays ?? USUAL_DAYS))
  const age = facts.tubeFittedOn === null ? null : daysBetween(facts.tubeFittedOn, lastTest)
  const isNew = age !== null && age >= 0 && age < SETTLING_DAYS
  const prudent = facts.leaving?.prudent ?? null
  const options: { readonly days: number; readonly reason: NextVisit['reason'] }[] = [
    { days: usual, reason: 'usual' },
    ...(isNew ? [{ days: SETTLING_DAYS, reason: 'settling-in' as const }] : []),
    ...(facts.leaving?.days === 0
      ? [{ days: 1, reason: 'already-out' as const }]
      : prudent !== null
        ? [{ days: Math.max(SOONEST_DAYS, Math.floor(prudent)), reason: 'leaves-window' as const }]
        : []),
  ]
  const soonest = options.reduce((a, b) => (b.days < a.days ? b : a))
  return { on: addDays(lastTest, soonest.days), ...soonest }
}
