import { describe, expect, it } from 'vitest'
import type { PumpWork, Run, Site, Step, Test } from '#core/records/index'
import { startVisit, watchSeconds } from '#renderer/commands/visit.ts'
import {
  changedSinceTest,
  fittedWords,
  lastTest,
  nextSetup,
  openTest,
  recordEnd,
  recordSeconds,
  runAtHand,
  startChoices,
  startFor,
  withRun,
  type NewRun,
} from '#renderer/screens/visit/desk/bench-record.ts'
import { AT, emptySite, freeze, nextId, PUMP } from '../commands-visit/site.ts'

const mL = (value: string) => ({ value, unit: 'mL' }) as const
const run = (start: string | null, end: string | null, seconds: number | null): Run => ({
  id: nextId(),
  start: start === null ? null : mL(start),
  end: end === null ? null : mL(end),
  seconds: seconds === null ? null : watchSeconds(seconds),
  excluded: null,
})
const series = (...runs: readonly Run[]): Test => ({
  kind: 'test',
  id: nextId(),
  at: AT,
  method: 'draw-down',
  instrumentId: 'cylinder',
  tubeImmersed: false,
  primed: true,
  productTemperature: null,
  runs,
})
const work = (...steps: readonly Step[]): PumpWork => freeze({ pumpId: PUMP, steps, verifications: [] })
const turn: Step = { kind: 'turn', id: 'turn', at: AT, eighths: 2 }
const container: Step = { kind: 'container-changed', id: 'container', at: AT }
const stop: Step = { kind: 'end-stop', id: 'stop', at: AT, direction: 'up' }

describe('the series on the bench', () => {
  it('is over once the screw was turned, a tube fitted or a container changed, not when a stop was met', () => {
    const first = series(run('100', '70', 60))
    expect(openTest(work(first))).toBe(first)
    expect(openTest(work(first, stop))).toBe(first)
    expect(openTest(work(first, turn))).toBeNull()
    expect(openTest(work(first, container))).toBeNull()
    expect(lastTest(work(first, turn))).toBe(first)
  })

  it('is made next as it was made last; after a turn the line stays primed, after a new container it does not', () => {
    const first = series(run('100', '70', 60))
    expect(nextSetup(work(first, turn), null, 'other')).toMatchObject({
      instrumentId: 'cylinder',
      tubeImmersed: false,
      primed: true,
    })
    expect(nextSetup(work(first, container), null, null).primed).toBe(false)
  })

  it('starts a visit as the last visit made it, with the cylinder that fits, and never primed', () => {
    expect(nextSetup(undefined, series(), 'right-size')).toMatchObject({
      instrumentId: 'right-size',
      tubeImmersed: false,
      primed: false,
    })
  })
})

describe('where the next run starts', () => {
  it('offers nothing that was not read in this visit', () => {
    expect(startFor(startChoices(null, null, 'draw-down'), null)).toBeNull()
  })

  it('is the same mark again, or where the last run ended, as the rep says', () => {
    const choices = startChoices(series(run('100', '70', 60)), null, 'draw-down')
    expect(startFor(choices, null)).toEqual(mL('100'))
    expect(startFor(choices, 'goes-on')).toEqual(mL('70'))
  })

  it('goes on by itself once a run went on, and for a container on a scale', () => {
    const went = startChoices(series(run('100', '70', 60), run('70', '40', 60)), null, 'draw-down')
    expect(startFor(went, null)).toEqual(mL('40'))
    const weighed = startChoices({ ...series(run('1200', '1164', 60)), method: 'weighed' }, null, 'weighed')
    expect(startFor(weighed, null)).toEqual(mL('1164'))
  })

  it('takes the mark of the series before, after a turn', () => {
    expect(startFor(startChoices(null, series(run('100', '70', 60)), 'draw-down'), null)).toEqual(mL('100'))
  })
})

const begun = (): { site: Site; at: { visitId: string; pumpId: string } } => {
  const visitId = nextId()
  return {
    site: freeze(startVisit(emptySite(), { id: visitId, at: AT, by: '' })),
    at: { visitId, pumpId: PUMP },
  }
}
const fresh = (): NewRun => ({
  test: { id: nextId(), at: AT },
  setup: {
    method: 'draw-down',
    instrumentId: null,
    tubeImmersed: true,
    primed: true,
    productTemperature: null,
  },
  runId: nextId(),
  start: mL('100'),
})
const testIn = (site: Site): Test => {
  const found = openTest(site.visits[0]?.work[0])
  if (found === null) throw new Error('no series')
  return found
}

describe('what the watch and the eye give', () => {
  it('begins the series and the run with the first time, in one step', () => {
    const { site, at } = begun()
    const timed = recordSeconds(site, at, null, null, fresh(), 60)
    expect(testIn(timed.site).runs).toMatchObject([
      { start: mL('100'), end: null, seconds: { value: '60.00', unit: 's' } },
    ])
  })

  it('puts a second time into a run of its own, and leaves the first as it was', () => {
    const { site, at } = begun()
    const first = recordSeconds(site, at, null, null, fresh(), 60)
    const test = testIn(first.site)
    const second = recordSeconds(first.site, at, test, runAtHand(test, first.runId), fresh(), 58)
    expect(testIn(second.site).runs.map((one) => one.seconds?.value)).toEqual(['60.00', '58.00'])
  })

  it('puts the time into the run whose level was read before the pump was started', () => {
    const { site, at } = begun()
    const read = withRun(site, at, null, null, fresh())
    const test = testIn(read.site)
    const timed = recordSeconds(read.site, at, test, runAtHand(test, null), fresh(), 60)
    expect(testIn(timed.site).runs).toHaveLength(1)
  })

  it('hands the level after a lap on to the lap that follows, as often as it is corrected', () => {
    const { site, at } = begun()
    const first = recordSeconds(site, at, null, null, fresh(), 60)
    const open = testIn(first.site)
    const second = recordSeconds(first.site, at, open, null, { ...fresh(), start: null }, 60)
    const test = testIn(second.site)
    const lap = test.runs[0]
    if (lap === undefined) throw new Error('no run')
    const ended = recordEnd(second.site, { ...at, test, run: lap }, mL('70'))
    expect(testIn(ended).runs[1]?.start).toEqual(mL('70'))
    const again = testIn(ended)
    const read = again.runs[0]
    if (read === undefined) throw new Error('no run')
    expect(testIn(recordEnd(ended, { ...at, test: again, run: read }, mL('71'))).runs[1]?.start).toEqual(
      mL('71'),
    )
  })
})

describe('what was done to a pump', () => {
  const tube: Step = { kind: 'tube-fitted', id: 'tube', at: AT }

  it('is a change only once the pump was timed: the first cylinder chosen changes nothing', () => {
    expect(changedSinceTest(work(series()))).toBe(false)
    expect(changedSinceTest(work(series(run('20', '9', 60)), turn))).toBe(true)
    expect(changedSinceTest(work(series(run('20', '9', 60)), turn, series()))).toBe(true)
    expect(changedSinceTest(work(series(run('20', '9', 60)), turn, series(run('20', '9', 60))))).toBe(false)
  })

  it('names a new tube and a new container, so that no report says "left as it was found" of them', () => {
    expect(fittedWords(work(series(), tube, container, tube))).toEqual(['New tube fitted', 'New container'])
    expect(fittedWords(work(series(), turn, stop))).toEqual([])
    expect(fittedWords(undefined)).toEqual([])
  })
})
