import type { Day } from '../records'
import { daysBetween } from '../units/days'
import { WORN_BELOW } from '../screw/limits'
import { SETTLING_DAYS } from './limits'
import type { TubeTests } from './tubes'
import type { Change, TubeAdvice, TubeReason } from './types'

/** What else is known of a tube today. */
export interface TubeFacts {
  readonly today: Day
  /** the day it was fitted; null when nobody wrote it down */
  readonly fittedOn: Day | null
  /** the site's own limit; null when it has none */
  readonly replaceAfterDays: number | null
  /** the advice of the last visit found that the screw does not act */
  readonly screwDoesNotAct: boolean
  /** the last series scattered by more than 5 % although the line was primed */
  readonly scatters: boolean
}

/**
 * Whether the tube should go: as-found below 80 % of what was left and not by chance; fallen below 80 % in all since it
 * was fitted; no response to the screw; scatter after priming; age. Cracks, flats and leaks are for the eye. A rising flow is not wear and is no reason.
 */
export function tubeAdvice(changes: readonly Change[], tube: TubeTests | null, facts: TubeFacts): TubeAdvice {
  const reasons = [
    fellAtOnce(changes.at(-1)),
    wornDown(tube),
    facts.screwDoesNotAct ? { code: 'screw-does-not-act' as const } : null,
    facts.scatters ? { code: 'scatters' as const } : null,
    overdue(facts),
  ].filter((reason): reason is TubeReason => reason !== null)
  const ageDays = facts.fittedOn === null ? null : Math.max(0, daysBetween(facts.fittedOn, facts.today))
  return { replace: reasons.length > 0, reasons, ageDays }
}

function fellAtOnce(last: Change | undefined): TubeReason | null {
  if (last === undefined || last.across !== 'nothing' || !last.differs || last.score === null) return null
  if (last.to.flow.value >= WORN_BELOW * last.from.flow.value) return null
  return { code: 'fell-at-once', left: last.from.flow.value, found: last.to.flow.value, score: last.score }
}

/** All the falls of the stretches of one tube multiplied, the first week of a new tube left out. */
function wornDown(tube: TubeTests | null): TubeReason | null {
  if (tube === null) return null
  const part = tube.stretches.reduce((product, tests) => {
    const settled = tests.filter(
      (test) => tube.from === null || daysBetween(tube.from, test.day) >= SETTLING_DAYS,
    )
    const first = settled[0]
    const last = settled.at(-1)
    return first === undefined || last === undefined
      ? product
      : (product * last.flow.value) / first.flow.value
  }, 1)
  return part < WORN_BELOW ? { code: 'worn-down', part } : null
}

function overdue({ fittedOn, replaceAfterDays, today }: TubeFacts): TubeReason | null {
  if (fittedOn === null || replaceAfterDays === null) return null
  const days = daysBetween(fittedOn, today) - replaceAfterDays
  return days > 0 ? { code: 'overdue', days } : null
}
