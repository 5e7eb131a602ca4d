import { describe, expect, it } from 'vitest'
import { testFlow } from '#core/drawdown/test-flow'
import { dosePerRack, ppmByVolume } from '#core/dose/concentration'
import { estimate } from '#core/statistics/make-estimate'
import { caught, conditions, g, mL, run, scale, series } from '#tests/core/drawdown/records'
import { good } from '#tests/support/outcomes'
import { seededRandom } from '#tests/support/seeded-random'
import worked from '../../references/drawdown.json'

/** Standard deviation and central 95 % half-width of many draws, as JCGM 101:2008 takes them. */
function spreadOf(draws: number, draw: () => number) {
  const values = Float64Array.from({ length: draws }, draw)
  const mean = values.reduce((a, b) => a + b, 0) / draws
  const deviation = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (draws - 1))
  values.sort()
  const at = (p: number) => values[Math.floor(p * draws)] ?? Number.NaN
  return { mean, deviation, halfWidth: (at(0.975) - at(0.025)) / 2 }
}

const MILLION = 1_000_000

describe('the budget against a million seeded draws (JCGM 101:2008)', () => {
  const flow = good(testFlow(caught(worked.drawdown_5rep.V), conditions()).flow)

  it('five catches in a class B cylinder: standard uncertainty within 1 %', () => {
    const chance = seededRandom(1)
    const drawn = spreadOf(
      MILLION,
      () => chance.normal(29.9, worked.drawdown_5rep.sem) + chance.between(-0.5, 0.5),
    )
    expect(Math.abs(drawn.deviation / flow.standard - 1)).toBeLessThan(0.01)
    expect(Math.abs(drawn.mean / flow.value - 1)).toBeLessThan(0.001)
  })

  it('an immersed draw-down of odd run times, carried on to ppm: standard uncertainty and interval within 1 %', () => {
    const here = conditions()
    const test = series('draw-down', [
      run('a', mL(48), mL('18.3'), 60),
      run('b', mL(49), mL('4.2'), 90),
      run('c', mL(45), mL('29.8'), 30),
      run('d', mL(50), mL('20.6'), 60),
      run('e', mL(48), mL('17.9'), 60),
    ])
    const q = good(testFlow(test, here).flow)
    const seconds = good(estimate(2.4, 's', [{ source: 'dose-seconds', standard: 0.03 }]))
    const water = good(estimate(3.1, 'L', [{ source: 'rinse-volume', standard: 0.06 }]))
    const ppm = good(ppmByVolume(good(dosePerRack(q, seconds)), water))

    const scatter = q.budget.find((l) => l.source === 'replicates')?.standard ?? Number.NaN
    const read = q.value / (1 - (6.35 / 23) ** 2)
    const perMinute = (60 * 5) / 300
    const chance = seededRandom(2)
    const drawn = spreadOf(MILLION, () => {
      const d = 6.35 + chance.between(-0.15, 0.15)
      const bore = 23 + chance.between(-0.2, 0.2)
      const k = 1 - (d / bore) ** 2
      const flow = k * (read + perMinute * chance.between(-0.5, 0.5)) + chance.normal(0, scatter)
      const dose = (flow * chance.normal(2.4, 0.03)) / 60
      const V = chance.normal(3.1, 0.06)
      return (1e6 * dose) / (1000 * V + dose)
    })
    expect(Math.abs(drawn.deviation / ppm.standard - 1)).toBeLessThan(0.01)
    expect(Math.abs(drawn.halfWidth / ppm.expanded - 1)).toBeLessThan(0.01)
  })

  it('weighed runs: density and scale within 1 %', () => {
    const test = series('weighed', [
      run('a', g(900), g('869.1')),
      run('b', g(869), g('838.6')),
      run('c', g(838), g('806.8')),
    ])
    const q = good(testFlow(test, conditions({ instrument: scale(), tube: conditions().tube })).flow)
    const scatter = q.budget.find((l) => l.source === 'replicates')?.standard ?? Number.NaN
    const chance = seededRandom(3)
    const grams = q.value * 1.02
    const drawn = spreadOf(
      MILLION,
      () =>
        (grams + chance.between(-0.2, 0.2)) / (1.02 * (1 + chance.between(-0.01, 0.01))) +
        chance.normal(0, scatter),
    )
    expect(Math.abs(drawn.deviation / q.standard - 1)).toBeLessThan(0.01)
  })
})

describe('the promise of 95 %', () => {
  it('intervals of whole simulated tests hold the true flow in 95 of 100, within 1.5', () => {
    const chance = seededRandom(4)
    const here = conditions()
    const tests = 6000
    let held = 0
    for (let i = 0; i < tests; i += 1) {
      const truth = chance.between(15, 40)
      const offset = chance.between(-0.5, 0.5)
      const volumes = [0, 1, 2].map(() => (truth * (1 + chance.normal(0, 0.012)) + offset).toFixed(2))
      const q = good(testFlow(caught(volumes), here).flow)
      if (q.low <= truth && truth <= q.high) held += 1
    }
    expect(held / tests).toBeGreaterThan(0.935)
    expect(held / tests).toBeLessThan(0.985)
  })
})

describe('seeded draws', () => {
  it('are the same for the same seed and fill the unit interval evenly', () => {
    const a = seededRandom(7)
    const b = seededRandom(7)
    expect([a.uniform(), a.normal(), a.below(100)]).toEqual([b.uniform(), b.normal(), b.below(100)])
    const drawn = spreadOf(200_000, () => a.uniform())
    expect(drawn.mean).toBeCloseTo(0.5, 2)
    expect(drawn.deviation).toBeCloseTo(1 / Math.sqrt(12), 2)
  })
})
