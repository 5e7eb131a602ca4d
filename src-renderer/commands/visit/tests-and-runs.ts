import type { Entry, EntryOf, Id, PumpWork, Run, Site, Step, Test } from '#core/records/index'
import { changeWork, replaceOne, without, type AtPump, type Stamp } from './open-visit'

export type TestSetup = Pick<
  Test,
  'method' | 'instrumentId' | 'tubeImmersed' | 'primed' | 'productTemperature'
>

/** Begins a series of runs at the screw position of now. */
export function addTest(site: Site, input: AtPump & Stamp & TestSetup): Site {
  const { id, at, method, instrumentId, tubeImmersed, primed, productTemperature } = input
  const test: Test = {
    kind: 'test',
    id,
    at,
    method,
    instrumentId,
    tubeImmersed,
    primed,
    productTemperature,
    runs: [],
  }
  return changeWork(site, input, (work) => ({ ...work, steps: [...work.steps, test] }))
}

export interface AtTest extends AtPump {
  readonly testId: Id
}
export interface AtRun extends AtTest {
  readonly runId: Id
}

/** Changes how a series is made: method, cylinder, tube in the cylinder, primed, product temperature. */
export const editTest = (site: Site, at: AtTest, setup: Partial<TestSetup>): Site =>
  changeTest(site, at, (test) => {
    const after = { ...test, ...setup }
    return (Object.keys(setup) as (keyof TestSetup)[]).every((key) => test[key] === after[key]) ? test : after
  })

export interface RunReadings {
  readonly start: Entry | null
  readonly end: Entry | null
  readonly seconds: EntryOf<'duration'> | null
}

/** Adds a run. `seconds` is an entry as typed, or what the stopwatch showed. */
export const addRun = (site: Site, at: AtTest & { readonly id: Id }, readings: RunReadings): Site =>
  changeTest(site, at, (test) => ({
    ...test,
    runs: [...test.runs, { id: at.id, ...readings, excluded: null }],
  }))

/** Stopwatch seconds as an entry, to a hundredth: what a hand-held watch shows, and far below a hand's own scatter. */
export const watchSeconds = (seconds: number): EntryOf<'duration'> => ({
  value: (Math.round(seconds * 100) / 100).toFixed(2),
  unit: 's',
})

/** Corrects a run; readings not named stay. */
export const editRun = (site: Site, at: AtRun, readings: Partial<RunReadings>): Site =>
  changeRun(site, at, (run) => ({ ...run, ...readings }))

/** Leaves a run out of the series, for a reason that is kept; a null reason counts it again. */
export function excludeRun(site: Site, at: AtRun, reason: string | null): Site {
  const why = reason === null ? null : reason.trim()
  if (why === '') return site
  return changeRun(site, at, (run) => (run.excluded === why ? run : { ...run, excluded: why }))
}

/** Takes a run away, for a slip of the hand. A run that was really made is excluded instead. */
export const removeRun = (site: Site, at: AtRun): Site =>
  changeTest(site, at, (test) => {
    const runs = without(test.runs, (run) => run.id === at.runId)
    return runs === test.runs ? test : { ...test, runs }
  })

function changeTest(site: Site, at: AtTest, change: (test: Test) => Test): Site {
  return changeWork(site, at, (work) =>
    withSteps(
      work,
      replaceOne(
        work.steps,
        (step) => step.kind === 'test' && step.id === at.testId,
        (step) => (step.kind === 'test' ? change(step) : step),
      ),
    ),
  )
}

const changeRun = (site: Site, at: AtRun, change: (run: Run) => Run): Site =>
  changeTest(site, at, (test) => {
    const runs = replaceOne(test.runs, (run) => run.id === at.runId, change)
    return runs === test.runs ? test : { ...test, runs }
  })

const withSteps = (work: PumpWork, steps: readonly Step[]): PumpWork =>
  steps === work.steps ? work : { ...work, steps }
