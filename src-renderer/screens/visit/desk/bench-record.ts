import type { Entry, Id, PumpWork, Run, Site, Step, Test } from '#core/records/index'
import {
  addRun,
  addTest,
  editRun,
  watchSeconds,
  type AtPump,
  type Stamp,
  type TestSetup,
} from '../../../commands/visit'

/** Steps after which the pump is not what it was: what is timed next is a new series. */
const ENDS_A_SERIES: ReadonlySet<Step['kind']> = new Set(['turn', 'tube-fitted', 'container-changed'])

/** The series being timed: the last one, unless something was done to the pump since. */
export function openTest(work: PumpWork | undefined): Test | null {
  const last = work?.steps.findLast((step) => step.kind === 'test' || ENDS_A_SERIES.has(step.kind))
  return last?.kind === 'test' ? last : null
}

/** The last series of a pump, whatever happened since: how the next one is likely to be made. */
export const lastTest = (work: PumpWork | undefined): Test | null =>
  work?.steps.findLast((step): step is Test => step.kind === 'test') ?? null

/** The pump was timed and then changed, and not timed again: its last result is the past. */
export const changedSinceTest = (work: PumpWork | undefined): boolean =>
  (work?.steps.some((step) => step.kind === 'test' && step.runs.length > 0) ?? false) &&
  (openTest(work)?.runs.length ?? 0) === 0

/** What was fitted or put on at a pump in a visit, in words for a list; empty when nothing was. */
export const fittedWords = (work: PumpWork | undefined): readonly string[] => [
  ...(work?.steps.some((step) => step.kind === 'tube-fitted') === true ? ['New tube fitted'] : []),
  ...(work?.steps.some((step) => step.kind === 'container-changed') === true ? ['New container'] : []),
]

/** How the next series is made when nothing else is said: as the last one; the line is primed unless it was opened. */
export function nextSetup(work: PumpWork | undefined, earlier: Test | null, suggested: Id | null): TestSetup {
  const before = lastTest(work)
  const last = work?.steps.findLast((step) => step.kind === 'test' || ENDS_A_SERIES.has(step.kind))
  const opened = last?.kind === 'tube-fitted' || last?.kind === 'container-changed'
  const model = before ?? earlier
  return {
    method: model?.method ?? 'draw-down',
    instrumentId: before?.instrumentId ?? suggested ?? earlier?.instrumentId ?? null,
    tubeImmersed: model?.tubeImmersed ?? true,
    primed: before !== null && before.primed && !opened,
    productTemperature: null,
  }
}

/** A run is finished when its readings and its seconds are there. */
export const isFinished = (run: Run, method: Test['method']): boolean =>
  run.seconds !== null && run.end !== null && (method === 'catch' || run.start !== null)

/** The run the bench is on: the one chosen if it is there, else the last when it is not finished. */
export function runAtHand(test: Test | null, chosen: Id | null): Run | null {
  if (test === null) return null
  const picked = test.runs.find((run) => run.id === chosen)
  if (picked !== undefined) return picked
  const last = test.runs.at(-1)
  return last !== undefined && last.excluded === null && !isFinished(last, test.method) ? last : null
}

/** How the reading before a run is come by, once there was a run before it. */
export type Between = 'filled-again' | 'goes-on'

/** The two readings a next run may start from; null where there is none yet. */
export interface StartChoices {
  readonly filledAgain: Entry | null
  readonly goesOn: Entry | null
  /** what the runs so far did */
  readonly usual: Between
}

/** Where the next run of this pump may start. Nothing is offered that was not read in this visit. */
export function startChoices(test: Test | null, before: Test | null, method: Test['method']): StartChoices {
  const none = {
    filledAgain: null,
    goesOn: null,
    usual: method === 'weighed' ? 'goes-on' : 'filled-again',
  } as const
  if (method === 'catch') return none
  const runs = (test?.runs ?? []).filter((run) => run.start !== null)
  const last = runs.at(-1)
  if (last === undefined) {
    const earlier = before?.method === method ? before.runs.find((run) => run.start !== null) : undefined
    return { ...none, filledAgain: method === 'weighed' ? null : (earlier?.start ?? null) }
  }
  const previous = runs.at(-2)
  const wentOn = previous !== undefined && last.start?.value === previous.end?.value && previous.end !== null
  const again = previous !== undefined && last.start?.value === previous.start?.value
  return {
    filledAgain: runs[0]?.start ?? null,
    goesOn: last.end,
    usual: wentOn ? 'goes-on' : again ? 'filled-again' : none.usual,
  }
}

export const startFor = (choices: StartChoices, chosen: Between | null): Entry | null => {
  const between = chosen ?? choices.usual
  return between === 'goes-on' ? choices.goesOn : choices.filledAgain
}

export interface NewRun {
  readonly test: Stamp
  readonly setup: TestSetup
  readonly runId: Id
  readonly start: Entry | null
}

/** The site with the series and the run that a reading or a time belongs to, made where they are not there yet. */
export function withRun(
  site: Site,
  at: AtPump,
  open: Test | null,
  run: Run | null,
  fresh: NewRun,
): { readonly site: Site; readonly testId: Id; readonly runId: Id } {
  const testId = open?.id ?? fresh.test.id
  const tested = open === null ? addTest(site, { ...at, ...fresh.test, ...fresh.setup }) : site
  if (run !== null) return { site: tested, testId, runId: run.id }
  const start = fresh.setup.method === 'catch' ? null : fresh.start
  const place = { ...at, testId, id: fresh.runId }
  return { site: addRun(tested, place, { start, end: null, seconds: null }), testId, runId: fresh.runId }
}

/** Writes the seconds of the watch into the run at hand, or into a new one when that has its seconds already. */
export function recordSeconds(
  site: Site,
  at: AtPump,
  open: Test | null,
  run: Run | null,
  fresh: NewRun,
  seconds: number,
): { readonly site: Site; readonly runId: Id } {
  const free = run !== null && run.seconds === null ? run : null
  const made = withRun(site, at, open, free, fresh)
  const place = { ...at, testId: made.testId, runId: made.runId }
  return { site: editRun(made.site, place, { seconds: watchSeconds(seconds) }), runId: made.runId }
}

/**
 * Writes the reading after a run. A lap that follows starts where this one ended, if its own start is still open.
 */
export function recordEnd(
  site: Site,
  at: AtPump & { readonly test: Test; readonly run: Run },
  end: Entry | null,
): Site {
  const place = { visitId: at.visitId, pumpId: at.pumpId, testId: at.test.id }
  const next = at.test.runs[at.test.runs.indexOf(at.run) + 1]
  const wasOpen = next !== undefined && (next.start === null || next.start === at.run.end)
  const ended = editRun(site, { ...place, runId: at.run.id }, { end })
  return wasOpen && next !== undefined && at.test.method !== 'catch'
    ? editRun(ended, { ...place, runId: next.id }, { start: end })
    : ended
}
