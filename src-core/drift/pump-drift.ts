import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Day } from '../records'
import { changeChart } from './change-chart'
import { changesOf } from './changes'
import { decayOf } from './decay'
import { leavingDays } from './leaving'
import { nextVisitOf } from './next-visit'
import { tubeAdvice, type TubeFacts } from './tube-advice'
import { tubesOf } from './tubes'
import type { FlowTest, Leaving, Outlook, PumpDrift, PumpHistory, TubeLife } from './types'

export interface DriftQuestion {
  readonly history: PumpHistory
  /** flows at the edges of today's window, mL/min */
  readonly window: Outcome<{ readonly low: number; readonly high: number }>
  /** racks of an average calendar day; null when unknown */
  readonly racksPerDay: number | null
  /** days between visits as the site wants it; null when it says nothing */
  readonly everyDays: number | null
  readonly tube: TubeFacts
}

/**
 * What time does to one pump: changes from left to found, the rate of each tube, when the flow leaves its window, what
 * that says about the tube and the next visit.
 */
export function pumpDrift(question: DriftQuestion): PumpDrift {
  const { history, tube: facts } = question
  const tubes = tubesOf(history, firstTube(history, facts.fittedOn))
  const changes = changesOf(history)
  const lives = tubes.map((tube): TubeLife => ({ from: tube.from, to: tube.to, decay: decayOf(tube) }))
  const last = history.findLast((event): event is FlowTest => event.kind === 'test') ?? null
  const outlook = outlookOf(lives, last)
  const leaving = leavingOf(outlook, question.window, question.racksPerDay)
  const fittedOn = tubes.at(-1)?.from ?? facts.fittedOn
  return {
    changes,
    tubes: lives,
    chart: changeChart(changes),
    outlook,
    leaving,
    tube: tubeAdvice(changes, tubes.at(-1) ?? null, { ...facts, fittedOn }),
    nextVisit:
      last === null
        ? null
        : nextVisitOf(last.day, {
            tubeFittedOn: fittedOn,
            leaving: leaving.ok ? leaving.value : null,
            everyDays: question.everyDays,
          }),
  }
}

/** A tube on record as fitted before the first test is the first tube, unless one is known to have come later. */
function firstTube(history: PumpHistory, fittedOn: Day | null): Day | null {
  const first = history.find((event) => event.kind === 'test')
  const changed = history.some((event) => event.kind === 'tube')
  return first === undefined || changed || fittedOn === null || fittedOn > first.day ? null : fittedOn
}

function leavingOf(
  outlook: Outcome<Outlook>,
  window: DriftQuestion['window'],
  racksPerDay: number | null,
): Outcome<Leaving> {
  return chain(all([window, outlook]), ([edges, { test, decay, rateFrom }]) => {
    if (!(edges.low >= 0 && edges.low < edges.high))
      return fail({ code: 'missing', field: 'pump.window', needed: 'window' })
    const found = leavingDays(test.flow, decay, edges)
    return ok({
      ...found,
      since: test.day,
      racks: times(found.days, racksPerDay),
      earliestRacks: times(found.earliest, racksPerDay),
      rateFrom,
    })
  })
}

const times = (days: number | null, perDay: number | null): number | null =>
  days === null || perDay === null ? null : days * perDay

/** The last test with the rate of its tube; before that has one, the last known rate, known half as well. */
function outlookOf(lives: readonly TubeLife[], test: FlowTest | null): Outcome<Outlook> {
  const none = fail({ code: 'missing', field: 'visits', needed: 'history' })
  if (test === null) return none
  const present = lives.at(-1)?.decay ?? none
  if (present.ok) return ok({ test, decay: present.value, rateFrom: 'this-tube' })
  for (const { decay } of lives.toReversed())
    if (decay.ok)
      return ok({
        test,
        decay: {
          ...decay.value,
          standard: 2 * decay.value.standard,
          expanded: 2 * decay.value.expanded,
          in30Days: { ...decay.value.in30Days, expanded: 2 * decay.value.in30Days.expanded },
        },
        rateFrom: 'an-earlier-tube',
      })
  return present
}
