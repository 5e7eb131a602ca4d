import { describe, expect, it } from 'vitest'
import { testFlow } from '#core/drawdown/test-flow'
import {
  caught,
  conditions,
  cylinder,
  g,
  mL,
  mm,
  product,
  run,
  scale,
  series,
  tube,
} from '#tests/core/drawdown/records'
import { codeOf, good } from '#tests/support/outcomes'
import worked from '../../references/drawdown.json'

const five = caught(worked.drawdown_5rep.V)

describe('flow of a series (worked example: five catches of 60 s in a 50 mL class B cylinder)', () => {
  const { flow, quality } = testFlow(five, conditions())
  const q = good(flow)
  const example = worked.drawdown_5rep

  it.each([
    ['flow', q.value, example.q],
    ['combined standard uncertainty', q.standard, example.uc],
    ['effective degrees of freedom', q.degreesOfFreedom, example.nu_eff],
    ['coverage factor', q.coverage, example.k],
    ['expanded uncertainty', q.expanded, example.U_q],
    ['relative expanded uncertainty', q.expanded / q.value, example.U_rel],
    ['cylinder line', q.budget.find((l) => l.source === 'cylinder-tolerance')?.standard, example.u_tol],
    ['replicate line', q.budget.find((l) => l.source === 'replicates')?.standard, example.sem],
    ['scatter', quality.standardDeviation, example.s],
    ['coefficient of variation', quality.cv, example.cv],
  ])('%s to ten digits', (_, found, value) => {
    expect(Math.abs((found ?? Number.NaN) / value - 1)).toBeLessThan(1e-10)
  })

  it('counts nothing twice: reading, timer and pulses are in the scatter already', () => {
    const withRollers = testFlow(five, conditions({ rollers: { perMinute: '30', count: '3' } }))
    expect(good(withRollers.flow).budget.map((l) => l.source)).toEqual(['replicates', 'cylinder-tolerance'])
    expect(q.predicted).toBe(false)
  })

  it('a class A cylinder halves the cylinder line', () => {
    const classA = good(testFlow(five, conditions({ instrument: cylinder({ tolerance: mL('0.25') }) })).flow)
    expect(classA.budget.find((l) => l.source === 'cylinder-tolerance')?.standard).toBeCloseTo(
      example.u_tol / 2,
      12,
    )
  })
})

describe('a single run', () => {
  const one = caught([30])
  const rollers = { perMinute: '30', count: '3' }

  it('has the predicted uncertainty of the worked example, marked as predicted', () => {
    const q = good(testFlow(one, conditions({ rollers })).flow)
    expect(q.predicted).toBe(true)
    expect(q.standard / q.value).toBeCloseTo(worked.single_run.u_rel, 12)
    expect(q.budget.map((l) => l.source)).toEqual([
      'reading',
      'roller-pulse',
      'timer',
      'run-repeatability',
      'cylinder-tolerance',
    ])
  })

  it('needs the graduation to predict anything', () => {
    const { flow, runs } = testFlow(one, conditions({ instrument: cylinder({ graduation: null }) }))
    expect(flow).toMatchObject({ problem: { code: 'missing', needed: 'graduation' } })
    expect(runs[0]?.flow).toEqual({ ok: true, value: 30 })
  })
})

describe('the three ways to test', () => {
  it('weighed: 36.12 g at 1.204 g/mL is 30.00 mL (worked example)', () => {
    const test = series('weighed', [run('a', g('1036.12'), g('1000.00'))])
    const { runs } = testFlow(
      test,
      conditions({ instrument: scale(), product: product({ density: { value: '1.204', unit: 'g/mL' } }) }),
    )
    expect(runs[0]?.volume).toEqual({ ok: true, value: expect.closeTo(30, 10) })
  })

  it('weighed: the cup that fills may stand on the scale instead of the container that empties', () => {
    const falls = testFlow(series('weighed', [run('a', g(900), g(870))]), conditions({ instrument: scale() }))
    const rises = testFlow(series('weighed', [run('a', g(12), g(42))]), conditions({ instrument: scale() }))
    expect(rises.runs[0]?.volume).toEqual(falls.runs[0]?.volume)
  })

  it('draw-down: the tube in the cylinder is taken off the volume read', () => {
    const test = series('draw-down', [run('a', mL(90), mL(60)), run('b', mL(60), mL(30))])
    const here = conditions({ instrument: cylinder({ capacity: mL(100), bore: mm('29.6') }) })
    const k = worked.tube_correction['100 mL']
    expect(good(testFlow(test, here).flow).value).toBeCloseTo(30 * k, 10)
    expect(good(testFlow({ ...test, tubeImmersed: false }, here).flow).value).toBe(30)
    expect(good(testFlow(test, here).flow).budget.map((l) => l.source)).toContain('tube-factor')
  })

  it('weighed runs share the doubt in density and scale', () => {
    const test = series('weighed', [run('a', g(900), g('869.1')), run('b', g(869), g('838.6'))])
    const q = good(testFlow(test, conditions({ instrument: scale() })).flow)
    expect(q.budget.map((l) => l.source)).toEqual(['replicates', 'scale', 'density'])
    expect(q.budget.find((l) => l.source === 'density')?.sign).toBe(-1)
  })
})

describe('runs that differ', () => {
  it('a longer run counts for more: all volume over all time', () => {
    const test = series('catch', [run('a', null, mL('30.6'), 60), run('b', null, mL('60.0'), 120)])
    const big = conditions({ instrument: cylinder({ capacity: mL(100) }) })
    expect(good(testFlow(test, big).flow).value).toBeCloseTo((60 * 90.6) / 180, 12)
  })

  it('an excluded run is worked out and not counted', () => {
    const runs = caught([10, 29.5, 30.1, 29.8, 30.2, 29.9]).runs.map((r, i) =>
      i === 0 ? { ...r, excluded: 'still priming' } : r,
    )
    const result = testFlow(series('catch', runs), conditions())
    expect(result.runs[0]).toMatchObject({ excluded: 'still priming', flow: { ok: true, value: 10 } })
    expect(good(result.flow).expanded).toBeCloseTo(worked.drawdown_5rep.U_q, 10)
  })

  it('an unfinished run is left out, a wrong one stops the series until it is mended or excluded', () => {
    const unfinished = [...five.runs, run('x', null, null)]
    expect(good(testFlow(series('catch', unfinished), conditions()).flow).value).toBeCloseTo(29.9, 12)
    const wrong = [...five.runs, run('x', null, mL('3o'))]
    expect(codeOf(testFlow(series('catch', wrong), conditions()).flow)).toBe('number-unreadable')
    const last = { ...run('x', null, mL('3o')), excluded: 'misread' }
    expect(good(testFlow(series('catch', [...five.runs, last]), conditions()).flow).value).toBeCloseTo(
      29.9,
      12,
    )
  })

  it('readings that show no scatter still carry the step they were read to', () => {
    const q = good(testFlow(caught([30, 30, 30]), conditions()).flow)
    expect(q.budget.find((l) => l.source === 'reading')?.standard).toBeCloseTo(0.5 / Math.sqrt(3), 12)
  })
})

describe('what stands in the way', () => {
  const immersed = series('draw-down', [run('a', mL(40), mL(20))])
  it.each([
    ['no runs', series('catch', []), conditions(), 'no-runs'],
    ['no instrument', five, conditions({ instrument: null }), 'missing'],
    ['a scale for a catch', five, conditions({ instrument: scale() }), 'missing'],
    ['a cylinder for a weighing', series('weighed', [run('a', g(9), g(8))]), conditions(), 'missing'],
    ['more than the cylinder holds', caught([51]), conditions(), 'over-capacity'],
    [
      'a level that rose in a draw-down',
      series('draw-down', [run('a', mL(20), mL(30))]),
      conditions(),
      'end-above-start',
    ],
    ['grams where a volume belongs', series('catch', [run('a', null, g(30))]), conditions(), 'unit-unknown'],
    ['no time', caught([30], 0), conditions(), 'number-out-of-range'],
    ['no bore', immersed, conditions({ instrument: cylinder({ bore: null }) }), 'missing'],
    ['no tube diameter', immersed, conditions({ tube: tube({ outsideDiameter: null }) }), 'missing'],
    [
      'a tube wider than the cylinder',
      immersed,
      conditions({ tube: tube({ outsideDiameter: mm(23) }) }),
      'tube-wider-than-cylinder',
    ],
    [
      'no density for a weighing',
      series('weighed', [run('a', g(9), g(8))]),
      conditions({ instrument: scale(), product: product({ density: null }) }),
      'missing',
    ],
  ] as const)('%s', (_, test, here, code) => {
    expect(codeOf(testFlow(test, here).flow)).toBe(code)
  })

  it('runs show their own flow before an instrument is chosen', () => {
    const { runs } = testFlow(five, conditions({ instrument: null }))
    expect(runs.map((r) => r.flow)).toEqual(worked.drawdown_5rep.V.map((value) => ({ ok: true, value })))
  })
})
