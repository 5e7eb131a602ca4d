import type { Id, Machine, Site, Step } from '../records'
import { gainPrior } from '../screw/gain-prior'
import { learn, pooledScatter } from '../screw/learn'
import { RUNS_AFTER_A_MOVE } from '../screw/limits'
import { observationOf } from '../screw/observation-of'
import { outlook } from '../screw/outlook'
import { positions } from '../screw/positions'
import type { GainPrior, ScrewObservation } from '../screw/types'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { countedRuns } from './counted-runs'
import { playTakenUp } from './play-taken-up'
import { pumpPasts, sameKindPasts } from './pump-past'
import type { PumpVisit, TestResult, Worksheet } from './types'

/** What a turn was expected to bring, from all that was known before it, beside what the test after it showed. */
export interface TurnForecast {
  /** the test after the turn */
  readonly testId: Id
  /** what was really turned since the test before, net, clockwise positive */
  readonly eighths: number
  /** mL/min, with the 95 % interval a test was expected to fall in; null where nothing was known of the screw */
  readonly expected: Estimate<'mL/min'> | null
  /** mL/min */
  readonly found: Estimate<'mL/min'>
  /** what was found lies in the interval that was foretold; null without one */
  readonly within: boolean | null
}

/**
 * Every turn of one pump's visit that was followed by a test on the same tube, oldest first: the foretold flow for what
 * was really turned, which may differ from what was advised. Empty for a pump or visit that is not there.
 */
export function turnForecasts(
  site: Pick<Site, 'visits'>,
  worksheet: Pick<Worksheet, 'visits'>,
  machines: readonly Machine[],
  at: { readonly visitId: Id; readonly pumpId: Id },
): readonly TurnForecast[] {
  const index = worksheet.visits.findIndex((one) => one.visitId === at.visitId)
  const worked = worksheet.visits[index]?.pumps.find((one) => one.pumpId === at.pumpId)
  const visit = site.visits.find((one) => one.id === at.visitId)
  const steps = visit?.work.find((one) => one.pumpId === at.pumpId)?.steps ?? []
  const pump = machines.flatMap((machine) => machine.pumps).find((one) => one.id === at.pumpId)
  if (worked === undefined || pump === undefined) return []
  const places = positions(steps)
  if (places.moves === 0) return []
  const pasts = pumpPasts(
    worksheet.visits.slice(0, index).flatMap((result) => {
      const record = site.visits.find((one) => one.id === result.visitId)
      return record === undefined || !result.closed ? [] : [{ visit: record, pumps: result.pumps }]
    }),
  )
  const own = pasts.find((past) => past.pumpId === pump.id) ?? null
  const prior = gainPrior(own?.segments ?? [], sameKindPasts(pump, machines, pasts))
  return places.tubes.flatMap((ids) => onTube(worked, ids, steps, prior, own))
}

function onTube(
  worked: PumpVisit,
  ids: readonly Id[],
  steps: readonly Step[],
  prior: GainPrior,
  own: Parameters<typeof playTakenUp>[2],
): readonly TurnForecast[] {
  const tests = worked.tests.filter((test) => ids.includes(test.testId) && test.flow.ok)
  const seen = tests.flatMap(observed)
  const takenUp = playTakenUp(steps, tests[0] ?? null, own)
  return tests.flatMap((test, i): readonly TurnForecast[] => {
    const before = seen[i - 1]
    if (before === undefined || !test.flow.ok || test.eighths === before.eighths) return []
    const eighths = test.eighths - before.eighths
    const expected = foretold(seen.slice(0, i), eighths, prior, takenUp)
    const found = test.flow.value
    const within = expected === null ? null : found.value >= expected.low && found.value <= expected.high
    return [{ testId: test.testId, eighths, expected, found, within }]
  })
}

const observed = (test: TestResult): readonly ScrewObservation[] =>
  test.flow.ok ? [observationOf(test.eighths, test.flow.value, countedRuns(test))] : []

function foretold(
  before: readonly ScrewObservation[],
  eighths: number,
  prior: GainPrior,
  takenUp: boolean,
): Estimate<'mL/min'> | null {
  const scale = before.at(-1)?.flow ?? 0
  const moved = before.some((one) => one.eighths !== before[0]?.eighths)
  if (!(scale > 0) || (prior.from === 'none' && !moved)) return null
  const belief = learn(before, scale, prior, takenUp)
  if (belief === null) return null
  const scatter = (scale * pooledScatter(before)) / Math.sqrt(RUNS_AFTER_A_MOVE)
  const seen = outlook(belief, eighths / 8, { low: 0, high: 2 * scale, room: 0, scatter })
  const made = estimate(seen.flow, 'mL/min', [{ source: 'flow', standard: seen.standard }], {
    predicted: true,
  })
  return made.ok ? made.value : null
}
