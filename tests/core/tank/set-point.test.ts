import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ok } from '#core/outcome'
import { setPointOf } from '#core/tank/set-point'
import { everyNumberFinite, good, wild } from './support'

const window = ok({ low: 1.8, target: 2, high: 2.2 })
const check = { method: 'conductivity', factor: '900', blank: '400' } as const

describe('the set point of a probe', () => {
  it('is what the water reads and what the target adds: 400 + 900 x 2.0 = 2200 µS/cm', () => {
    expect(good(setPointOf([check], window))).toMatchObject({ low: 2020, target: 2200, high: 2380 })
  })

  it('comes from the last check that says both, and asks for one where none does', () => {
    const later = { ...check, factor: '1000' }
    const half = { ...check, blank: null }
    expect(good(setPointOf([check, later, half], window)).target).toBe(2400)
    expect(setPointOf([half], window)).toMatchObject({ ok: false, problem: { code: 'missing' } })
  })

  it('answers any window with numbers or a reason', () => {
    fc.assert(
      fc.property(wild, wild, wild, (low, target, high) => {
        expect(everyNumberFinite(setPointOf([check], ok({ low, target, high })))).toBe(true)
      }),
    )
  })
})
