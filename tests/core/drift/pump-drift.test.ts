import { describe, expect, it } from 'vitest'
import { changeChart } from '#core/drift/change-chart'
import { changesOf } from '#core/drift/changes'
import { pumpHistory, type HistoryVisit } from '#core/drift/history'
import { pumpDrift, type DriftQuestion } from '#core/drift/pump-drift'
import { tubesOf } from '#core/drift/tubes'
import type { Break, PumpHistory } from '#core/drift/types'
import type { Step } from '#core/records/visit'
import { ok } from '#core/outcome'
import { addDays } from '#core/units/days'
import { FELL, INDIVIDUALS } from '#tests/references/drift'
import { flowOf, START, testOn } from './flows'

const on = (day: number): string => addDays(START, day)
const brk = (kind: Break['kind'], day: number): Break => ({ kind, day: on(day) })
const ask = (history: PumpHistory, more: Partial<DriftQuestion> = {}) =>
  pumpDrift({
    history,
    window: ok({ low: 21.6, high: 26.4 }),
    racksPerDay: 100,
    everyDays: 28,
    tube: {
      today: on(100),
      fittedOn: null,
      replaceAfterDays: null,
      screwDoesNotAct: false,
      scatters: false,
    },
    ...more,
  })

const testStep = (id: string, day: number): Step => ({
  kind: 'test',
  id,
  at: `${on(day)}T09:00:00.000Z`,
  method: 'catch',
  instrumentId: null,
  tubeImmersed: false,
  primed: true,
  productTemperature: null,
  runs: [],
})
const visitOn = (day: number, steps: readonly Step[], more: Partial<HistoryVisit> = {}): HistoryVisit => ({
  visitId: `visit ${String(day)}`,
  day: on(day),
  steps,
  flows: new Map(steps.map((step) => [step.id, flowOf(24, 0.3)])),
  productId: 'product',
  tubeFittedOn: '2025-06-01',
  ...more,
})

describe('from what was left to what was found', () => {
  it('repeats the derived example: 24.0 +- 0.6 to 18.6 +- 0.6 is -22.5 % with a score of 6.36', () => {
    const standard = FELL.left.expanded / 1.96
    const [change] = changesOf([testOn(0, FELL.left.value, standard), testOn(60, FELL.found.value, standard)])
    expect(change?.relative).toBeCloseTo(FELL.relative, 12)
    expect(change?.score).toBeCloseTo(FELL.score, 2)
    expect(change).toMatchObject({ differs: true, days: 60, across: 'nothing' })
  })

  it('looks across visits only, and names what else lies between', () => {
    const history = [
      testOn(0, 20, 0.3, 'a'),
      brk('turn', 0),
      testOn(0, 24, 0.3, 'a'),
      brk('product', 20),
      brk('tube', 21),
      testOn(30, 23, 0.3, 'b'),
    ]
    expect(changesOf(history)).toMatchObject([{ days: 30, across: 'tube' }])
  })

  it('meets the limits of the published individuals chart', () => {
    // Each change is from 100 mL/min to 100 and the published value, so its percentage is that value.
    const changes = INDIVIDUALS.data.flatMap((percent, i) =>
      changesOf([testOn(20 * i, 100, 0.3), testOn(20 * i + 10, 100 + percent, 0.3)]),
    )
    const chart = changeChart(changes)
    expect(chart.ok).toBe(true)
    if (!chart.ok) return
    expect(chart.value.mean).toBeCloseTo(INDIVIDUALS.mean, 8)
    expect(Math.abs(chart.value.upper - INDIVIDUALS.upper)).toBeLessThan(5e-5)
    expect(Math.abs(chart.value.lower - INDIVIDUALS.lower)).toBeLessThan(5e-5)
    expect(chart.value.values.filter((value) => value.outside)).toEqual([])
  })

  it('draws no limits from four changes', () => {
    const changes = changesOf([0, 1, 2, 3, 4].map((i) => testOn(30 * i, 24)))
    expect(changeChart(changes)).toMatchObject({ ok: false, problem: { code: 'too-few-runs', have: 4 } })
  })
})

describe('the life of a pump', () => {
  it('begins a new tube where a step or the record says so, once', () => {
    const fitted: Step = { kind: 'tube-fitted', id: 'tube', at: `${on(30)}T10:00:00.000Z` }
    const history = pumpHistory([
      visitOn(0, [testStep('a', 0)]),
      visitOn(30, [testStep('b', 30), fitted, testStep('c', 30)]),
      visitOn(60, [testStep('d', 60)], { tubeFittedOn: on(30) }),
      visitOn(90, [testStep('e', 90)], { tubeFittedOn: on(75) }),
    ])
    const tubes = tubesOf(history)
    expect(tubes.map((tube) => tube.stretches.flat().map((test) => test.testId))).toEqual([
      ['a', 'b'],
      ['c', 'd'],
      ['e'],
    ])
    expect(tubes.map((tube) => tube.from)).toEqual([null, on(30), on(75)])
  })

  it('cuts a stretch at a turn and at another product', () => {
    const turn: Step = { kind: 'turn', id: 'turn', at: `${on(0)}T10:00:00.000Z`, eighths: 3 }
    const history = pumpHistory([
      visitOn(0, [testStep('a', 0), turn, testStep('b', 0)]),
      visitOn(30, [testStep('c', 30)], { productId: 'another' }),
    ])
    const [tube] = tubesOf(history)
    expect(tube?.stretches.map((tests) => tests.length)).toEqual([1, 1, 1])
  })

  it('takes a jump upward for what somebody did, never for drift', () => {
    const history = [testOn(0, 24, 0.1), testOn(30, 23.8, 0.1), testOn(60, 34, 0.1), testOn(90, 33.6, 0.1)]
    expect(changesOf(history).map((one) => one.jumped)).toEqual([false, true, false])
    expect(tubesOf(history)[0]?.stretches.map((tests) => tests.length)).toEqual([2, 2])
    expect(ask(history).tubes[0]?.decay).toMatchObject({ ok: true, value: { direction: 'falling' } })
  })

  it('leaves out tests that cannot be trusted', () => {
    expect(pumpHistory([visitOn(0, [testStep('a', 0)], { flows: new Map() })])).toEqual([])
  })
})

describe('what drift leads to', () => {
  const falling = [0, 30, 60, 90].map((day) => testOn(day, 24 * Math.exp(-0.0006 * day), 0.12))

  it('tells the day and the racks until the flow leaves, and comes again before it may', () => {
    const { leaving, nextVisit, tube } = ask(falling)
    expect(leaving.ok && leaving.value.days).toBeCloseTo(Math.log(24 / 21.6) / 0.0006 - 90, 6)
    expect(leaving.ok && leaving.value.racks).toBeCloseTo(100 * (Math.log(24 / 21.6) / 0.0006 - 90), 4)
    expect(nextVisit).toMatchObject({ reason: 'usual', days: 28, on: on(118) })
    expect(tube.replace).toBe(false)
    expect(ask(falling, { everyDays: 120 }).nextVisit).toMatchObject({ reason: 'leaves-window' })
  })

  it('tells no day, rather than that a window is missing, where the window only says at most', () => {
    const { leaving } = ask(falling, { window: ok({ low: 0, high: 26.4 }) })
    expect(leaving).toMatchObject({ ok: true, value: { edge: 'high', days: null } })
  })

  it('looks at a new tube after a week', () => {
    const { nextVisit, tubes } = ask([...falling, brk('tube', 95), testOn(95, 25)])
    expect(nextVisit).toMatchObject({ reason: 'settling-in', days: 7, on: on(102) })
    expect(tubes).toHaveLength(2)
    expect(tubes[1]?.decay.ok).toBe(false)
  })

  it('borrows the rate of the tube before until the new one has its own', () => {
    const { leaving } = ask([...falling, brk('tube', 95), testOn(95, 25, 0.12)])
    expect(leaving.ok && leaving.value.rateFrom).toBe('an-earlier-tube')
  })

  it('asks for a new tube when the flow fell by more than a fifth, and not when it rose', () => {
    expect(ask([testOn(0, 24), testOn(60, 18.6)]).tube).toMatchObject({
      replace: true,
      reasons: [{ code: 'fell-at-once' }, { code: 'worn-down' }],
    })
    expect(ask([testOn(0, 18.6), testOn(60, 24)]).tube.replace).toBe(false)
  })

  it('adds up small falls between adjustments to a worn tube', () => {
    const steps = [0, 1, 2, 3, 4].flatMap((i) => [
      testOn(30 * i, 24, 0.1, `v${String(i)}`),
      testOn(30 * i + 30, 22.8, 0.1, `v${String(i + 1)}`),
      brk('turn', 30 * i + 30),
    ])
    const { tube } = ask(steps)
    expect(tube.reasons).toMatchObject([{ code: 'worn-down' }])
    const [reason] = tube.reasons
    if (reason?.code === 'worn-down') expect(reason.part).toBeCloseTo(0.95 ** 5, 10)
  })

  it('knows an overdue tube by its day', () => {
    const tube = {
      today: on(100),
      fittedOn: on(-265),
      replaceAfterDays: 300,
      screwDoesNotAct: true,
      scatters: false,
    }
    const advice = ask(falling, { tube }).tube
    expect(advice.ageDays).toBe(365)
    expect(advice.reasons).toEqual([{ code: 'screw-does-not-act' }, { code: 'overdue', days: 65 }])
  })

  it('says nothing without a test', () => {
    const drift = ask([])
    expect(drift).toMatchObject({ changes: [], nextVisit: null, tube: { replace: false } })
    expect(drift.leaving.ok).toBe(false)
  })
})
