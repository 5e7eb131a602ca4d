import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { candidate, planTest, rightSize } from '#core/drawdown/choose-cylinder'
import { testFlow } from '#core/drawdown/test-flow'
import { tubeFactorOf } from '#core/drawdown/tube-factor'
import type { TestConditions } from '#core/drawdown/types'
import type { Entry, Run, Test } from '#core/records/index'
import { UNIT_NAMES } from '#core/units/dimensions'
import { convertExactly } from '#core/units/quantity'
import { caught, conditions, cylinder, mL, product, run, series, tube } from '#tests/core/drawdown/records'
import { allFinite, good } from '#tests/support/outcomes'

/** Numbers as people type them, and a few as they should not. */
const text = fc.oneof(
  fc.integer({ min: -5, max: 100_000 }).map(String),
  fc.double({ min: 0, max: 1e6, noNaN: true }).map((n) => n.toFixed(3)),
  fc.constantFrom('', '0', '0.000000000000001', '999999999999999', '-1', 'abc', 'NaN', 'Infinity', '1e308'),
)
const entry: fc.Arbitrary<Entry> = fc.record({ value: text, unit: fc.constantFrom(...UNIT_NAMES) })
const maybe = fc.option(entry)
const anyRun: fc.Arbitrary<Run> = fc.record({
  id: fc.uuid(),
  start: maybe,
  end: maybe,
  seconds: fc.option(fc.record({ value: text, unit: fc.constantFrom('s' as const, 'min' as const) })),
  excluded: fc.option(fc.string()),
})
const anyTest: fc.Arbitrary<Test> = fc.record({
  kind: fc.constant('test' as const),
  id: fc.uuid(),
  at: fc.constant('2026-03-09T14:05:00.000Z'),
  method: fc.constantFrom('draw-down' as const, 'catch' as const, 'weighed' as const),
  instrumentId: fc.option(fc.uuid()),
  tubeImmersed: fc.boolean(),
  primed: fc.boolean(),
  productTemperature: fc.constant(null),
  runs: fc.array(anyRun, { maxLength: 8 }),
})
const length = fc.option(fc.record({ value: text, unit: fc.constantFrom('mm' as const, 'in' as const) }))
const anyConditions: fc.Arbitrary<TestConditions> = fc.record({
  instrument: fc.option(
    fc.record({
      id: fc.uuid(),
      name: fc.string(),
      kind: fc.constantFrom('cylinder' as const, 'cup' as const, 'scale' as const, 'timer' as const),
      capacity: maybe,
      graduation: maybe,
      tolerance: maybe,
      bore: length,
      checkedOn: fc.constant(null),
    }),
  ),
  product: fc.option(text.map((value) => product({ density: { value, unit: 'g/mL' } }))),
  tube: length.map((outsideDiameter) => tube({ outsideDiameter })),
  rollers: fc.option(fc.record({ perMinute: text, count: text })),
})
const volumes = fc.array(
  fc.integer({ min: 200, max: 499 }).map((n) => n / 10),
  { minLength: 2, maxLength: 8 },
)
const level = (v: number) => (50 - v).toFixed(1)
const inches = (value: string) => ({
  value: convertExactly(value, 'mm', 'in').toFixed(15),
  unit: 'in' as const,
})
const ounces = (value: number | string) => ({
  value: convertExactly(String(value), 'mL', 'fl-oz-us').toFixed(15),
  unit: 'fl-oz-us' as const,
})
const relative = (a: number, b: number) => (b === 0 ? Math.abs(a) : Math.abs(a / b - 1))

describe('any record at all', () => {
  it('gives finite numbers or a problem, never an exception', () => {
    fc.assert(
      fc.property(anyTest, anyConditions, (test, here) => allFinite(testFlow(test, here))),
      { numRuns: 3000 },
    )
  })

  it('so do plans and tube factors', () => {
    fc.assert(
      fc.property(anyConditions, fc.double(), fc.double(), fc.double(), (here, flow, seconds, wanted) => {
        if (here.instrument === null) return true
        const tool = candidate({ method: 'catch', tubeImmersed: true }, here, here.instrument)
        const tools = tool.ok ? [tool.value] : []
        return (
          allFinite(tool) &&
          allFinite(rightSize(flow, seconds, 'draw-down', tools)) &&
          allFinite(planTest({ flow, runs: seconds, relative: wanted }, tools)) &&
          allFinite(tubeFactorOf(flow, seconds))
        )
      }),
      { numRuns: 2000 },
    )
  })
})

describe('laws', () => {
  it('the same test in US units gives the same flow, scatter and budget to 1e-12', () => {
    fc.assert(
      fc.property(volumes, (drawn) => {
        const metric = drawn.map((v, i) => run(`${i}`, mL(50), mL(level(v)), 60))
        const us = drawn.map((v, i) => ({
          ...run(`${i}`, ounces(50), ounces(level(v))),
          seconds: { value: '1', unit: 'min' as const },
        }))
        const here = conditions({ instrument: cylinder({ bore: { value: '23', unit: 'mm' } }) })
        const usHere = conditions({
          instrument: cylinder({
            capacity: ounces('50.1'),
            graduation: ounces(1),
            tolerance: ounces('0.5'),
            bore: inches('23'),
          }),
          tube: tube({ outsideDiameter: { value: '0.25', unit: 'in' } }),
        })
        const a = testFlow(series('draw-down', metric), here)
        const b = testFlow(series('draw-down', us), usHere)
        const [p, q] = [good(a.flow), good(b.flow)]
        expect(relative(q.value, p.value)).toBeLessThan(1e-12)
        if ((a.quality.standardDeviation ?? 0) > 0.01) {
          expect(relative(q.expanded, p.expanded)).toBeLessThan(1e-11)
          expect(b.quality.cv).toBeCloseTo(a.quality.cv ?? Number.NaN, 12)
        }
        expect(b.quality.findings.map((f) => f.code)).toEqual(a.quality.findings.map((f) => f.code))
      }),
    )
  })

  it('more volume in the same time is more flow; more time for the same volume is less', () => {
    fc.assert(
      fc.property(volumes, fc.integer({ min: 31, max: 300 }), (drawn, seconds) => {
        const here = conditions()
        const flow = (list: readonly number[], t: number) => good(testFlow(caught(list, t), here).flow).value
        const more = drawn.map((v, i) => (i === 0 ? v + 0.1 : v))
        return flow(more, 60) > flow(drawn, 60) && flow(drawn, seconds) < flow(drawn, seconds - 1)
      }),
    )
  })

  it('a looser cylinder never makes a result look better', () => {
    fc.assert(
      fc.property(volumes, fc.integer({ min: 1, max: 40 }), (drawn, tenths) => {
        const width = (t: number) =>
          good(
            testFlow(
              caught(drawn),
              conditions({ instrument: cylinder({ tolerance: mL((t / 10).toFixed(1)) }) }),
            ).flow,
          ).standard
        return width(tenths + 1) > width(tenths)
      }),
    )
  })

  it('shuffling the runs changes neither the flow nor its uncertainty', () => {
    fc.assert(
      fc.property(volumes, (drawn) => {
        const a = good(testFlow(caught(drawn), conditions()).flow)
        const b = good(testFlow(caught(drawn.toReversed()), conditions()).flow)
        return relative(a.value, b.value) < 1e-12 && relative(a.expanded, b.expanded) < 1e-9
      }),
    )
  })
})
