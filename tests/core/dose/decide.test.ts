import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decide, verdictOf } from '#core/dose/decide'
import { dosePerRack } from '#core/dose/concentration'
import { onBasis } from '#core/dose/on-basis'
import { doseSeconds } from '#core/dose/dose-seconds'
import type { WindowNumbers } from '#core/dose/read-window'
import { candidate } from '#core/drawdown/choose-cylinder'
import { testFlow } from '#core/drawdown/test-flow'
import type { Instrument, RinseWater } from '#core/records/index'
import { estimate } from '#core/statistics/make-estimate'
import { pump, rinse } from '#tests/core/dose/records'
import { caught, conditions, cylinder, mL, product, tube } from '#tests/core/drawdown/records'
import { good } from '#tests/support/outcomes'

const window = (low: number, target: number, high: number): WindowNumbers => ({
  basis: 'ppm-vv',
  low,
  target,
  high,
})
const ppm = (value: number, standard: number, predicted = false) =>
  good(estimate(value, 'ppm-vv', [{ source: 'replicates', standard }], { predicted }))

describe('the verdict, with a guard band as wide as the 95 % interval', () => {
  const w = window(200, 250, 300)
  // U is 1.96 times the standard uncertainty: 19.6 here.
  it.each([
    [250, 'proved-in'],
    [220, 'proved-in'],
    [219, 'in-not-proved'],
    [200, 'in-not-proved'],
    [199, 'out-not-proved'],
    [180, 'proved-out'],
    [281, 'in-not-proved'],
    [301, 'out-not-proved'],
    [320, 'proved-out'],
  ] as const)('%d ppm in a window of 200 to 300 is %s', (value, verdict) => {
    expect(verdictOf(ppm(value, 10), w)).toBe(verdict)
  })

  it('a single run proves nothing, since its scatter is a forecast', () => {
    expect(verdictOf(ppm(250, 1, true), w)).toBe('in-not-proved')
    expect(verdictOf(ppm(400, 1, true), w)).toBe('out-not-proved')
  })

  it('proved means proved: the interval never reaches the other side', () => {
    const any = fc.double({ min: 0, max: 600, noNaN: true })
    fc.assert(
      fc.property(any, fc.double({ min: 0.01, max: 60, noNaN: true }), (value, standard) => {
        const e = ppm(value, standard)
        const verdict = verdictOf(e, w)
        if (verdict === 'proved-in') return e.low >= 200 && e.high <= 300
        if (verdict === 'proved-out') return e.low > 300 || e.high < 200
        return verdict === (value >= 200 && value <= 300 ? 'in-not-proved' : 'out-not-proved')
      }),
    )
  })
})

const doseIn = (
  volumes: readonly number[],
  water: RinseWater,
  tools: readonly Instrument[],
  instrument = cylinder(),
) => {
  const { flow, state } = testFlow(caught(volumes), conditions({ instrument }))
  if (state === null) throw new Error('the series has a flow')
  const dose = good(
    dosePerRack(good(flow), good(doseSeconds(pump({ doseSeconds: { value: '2', unit: 's' } })))),
  )
  const value = good(onBasis('ppm-vv', dose, { rinse: water, product: product() }))
  const around = { product: product(), tube: tube(), rollers: null }
  const how = { method: 'catch', tubeImmersed: false } as const
  return { value, settling: { state, tools: tools.map((tool) => good(candidate(how, around, tool))) } }
}
const settle = (w: WindowNumbers, made: ReturnType<typeof doseIn>) => decide(made.value, w, made.settling)

describe('the cheapest step that would settle it', () => {
  const classA = cylinder({ id: 'class A', tolerance: mL('0.25'), graduation: mL('0.5') })
  const large = cylinder({ id: '100 mL', capacity: mL(100), tolerance: mL('0.5') })
  it('is nothing when it is proved', () => {
    const made = doseIn([30, 30.1, 29.9], rinse(3), [cylinder()])
    expect(settle(window(300, 333, 366), made)).toMatchObject({ verdict: 'proved-in', settle: null })
    expect(settle(window(100, 150, 200), made)).toMatchObject({ verdict: 'proved-out', settle: null })
  })

  it('is one more run when two runs scatter', () => {
    const made = doseIn([30.2, 29.8], rinse(3), [cylinder()])
    expect(made.value.expanded).toBeGreaterThan(25)
    expect(settle(window(315, 333, 351), made)).toMatchObject({
      settle: { kind: 'more-runs', runs: 1, seconds: 60 },
    })
  })

  it('is another cylinder when this one is what limits it', () => {
    const made = doseIn([30.02, 29.98, 30, 30.01], rinse(3), [cylinder(), classA])
    expect(settle(window(328, 333, 338), made)).toMatchObject({
      verdict: 'in-not-proved',
      settle: { kind: 'better-cylinder', instrumentId: 'class A' },
    })
  })

  it('is longer runs when the cylinder at hand has room for them', () => {
    const made = doseIn([20.02, 19.98, 20, 20.01], rinse(2), [cylinder()])
    expect(settle(window(325.5, 333.2, 341), made)).toMatchObject({
      verdict: 'in-not-proved',
      settle: { kind: 'longer-runs', runs: 3 },
    })
  })

  it('is a turn when the dose lies near the edge or outside', () => {
    const made = doseIn([30, 30.1, 29.9], rinse(3), [cylinder(), classA, large])
    expect(settle(window(332, 350, 368), made)).toMatchObject({
      verdict: 'in-not-proved',
      settle: { kind: 'turn-first' },
    })
    expect(settle(window(335, 355, 375), made)).toMatchObject({
      verdict: 'out-not-proved',
      settle: { kind: 'turn-first' },
    })
  })

  it('does not exist when the rinse water alone is less certain than the window is wide', () => {
    const made = doseIn([30, 30.1, 29.9], rinse(3, '4'), [cylinder(), classA, large])
    expect(settle(window(320, 333, 346), made)).toMatchObject({ settle: { kind: 'cannot-be-settled' } })
  })

  it('is judged at the target, where the turn would lead, however far off the dose is found', () => {
    // 4 % of rinse water are 7.8 % of the dose whatever it is: ±10 % leaves room for that, ±7.5 % does not
    for (const found of [12, 30, 48]) {
      const made = doseIn([found], rinse(3, '4'), [cylinder(), classA, large])
      const at = (half: number) => settle(window(200 * (1 - half), 200, 200 * (1 + half)), made)
      expect(at(0.1)).toMatchObject({ verdict: 'out-not-proved', settle: { kind: 'turn-first' } })
      expect(at(0.075)).toMatchObject({ verdict: 'out-not-proved', settle: { kind: 'cannot-be-settled' } })
    }
  })

  it('is not offered while nothing flows', () => {
    const made = doseIn([0], rinse(3), [cylinder(), classA, large])
    expect(settle(window(300, 333, 366), made)).toMatchObject({ verdict: 'out-not-proved', settle: null })
  })

  it('never offers a run that overflows the cylinder it names', () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 480 }), fc.integer({ min: 1, max: 60 }), (tenths, width) => {
        const v = tenths / 10
        const tools = [cylinder(), classA, large]
        const made = doseIn(
          [v, v + 0.1, v - 0.1].map((n) => Number(n.toFixed(1))),
          rinse(3),
          tools,
        )
        const at = made.value.value
        const { settle: step } = settle(window(at - width, at, at + width), made)
        if (step === null || (step.kind !== 'longer-runs' && step.kind !== 'better-cylinder')) return true
        const id = step.kind === 'longer-runs' ? 'cylinder' : step.instrumentId
        const capacity = id === '100 mL' ? 100 : 50
        return (made.settling.state.flow * step.seconds) / 60 <= capacity + 1e-9
      }),
      { numRuns: 60, endOnFailure: true },
    )
  })

  it('really would settle it: the forecast step, made with the same flow, proves the value', () => {
    const made = doseIn([30.2, 29.8], rinse(3), [cylinder()])
    const w = window(315, 333, 351)
    const step = settle(w, made).settle
    const more = step?.kind === 'more-runs' ? step.runs : 0
    const runs = [30.2, 29.8, ...Array.from({ length: more }, (_, i) => (i % 2 === 0 ? 30.2 : 29.8))]
    expect(settle(w, doseIn(runs, rinse(3), [cylinder()])).verdict).toBe('proved-in')
  })
})
