import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { conductivityAt25, lineThrough, probeGramsPerRack, setPointFor, strengthHeld } from '#core/tank/probe'
import { rechargeGrams } from '#core/tank/charge'
import { everyNumberFinite, good, tank, wild } from './support'

const line = { water: 400, perGram: 900 }

describe('probe control', () => {
  it('uses as much product per rack as time control at the same strength', () => {
    expect(good(probeGramsPerRack(2, 3))).toBe(good(rechargeGrams(tank(40, 3), 2)))
  })

  it('finds the line from two titrated strengths, and the set point on it', () => {
    const found = good(lineThrough({ strength: 1, conductivity: 1300 }, { strength: 3, conductivity: 3100 }))
    expect(found).toEqual(line)
    expect(good(setPointFor(found, 2))).toBe(2200)
  })

  it('holds more than it was told when the probe is fouled: half the reading, more than twice the strength', () => {
    expect(good(strengthHeld(line, 2200))).toBe(2)
    expect(good(strengthHeld(line, 2200, 0.5))).toBeCloseTo((4400 - 400) / 900, 12)
  })

  it('feeds nothing over water saltier than the set point', () => {
    expect(good(strengthHeld({ water: 3000, perGram: 900 }, 2200))).toBe(0)
  })

  // 2 % per degree: general pages on conductivity
  it('reads 1.7 times too high at 60 °C without temperature compensation', () => {
    expect(good(conductivityAt25(1700, 60))).toBeCloseTo(1000, 9)
  })

  it('refuses a line that does not rise', () => {
    expect(
      lineThrough({ strength: 2, conductivity: 900 }, { strength: 2, conductivity: 1800 }),
    ).toMatchObject({ ok: false, problem: { reason: 'no-spread-in-x' } })
    expect(lineThrough({ strength: 1, conductivity: 900 }, { strength: 2, conductivity: 800 }).ok).toBe(false)
  })

  it('answers any numbers at all with a result or a reason', () => {
    fc.assert(
      fc.property(wild, wild, wild, wild, (a, b, c, d) => {
        const any = { water: a, perGram: b }
        const results = [
          conductivityAt25(a, b),
          setPointFor(any, c),
          strengthHeld(any, c, d),
          probeGramsPerRack(a, b),
          lineThrough({ strength: a, conductivity: b }, { strength: c, conductivity: d }),
        ]
        for (const result of results) expect(everyNumberFinite(result)).toBe(true)
      }),
      { numRuns: 1000 },
    )
  })
})
