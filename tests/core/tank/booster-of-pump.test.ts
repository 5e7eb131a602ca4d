import { describe, expect, it } from 'vitest'
import { explainBooster } from '#core/explain/booster'
import { exactly } from '#core/statistics/make-estimate'
import { boosterOfPump } from '#core/tank/booster-of-pump'
import { machine } from '#tests/core/sanitize/records'
import { arithmetic } from '#tests/support/arithmetic'
import reference from '../../references/tank.json'
import { good } from './support'

const { booster } = reference
const door = machine({
  boosterVolume: { value: String(booster.volume_L), unit: 'L' },
  rinse: { kind: 'measured', perRack: { value: String(booster.rinse_L), unit: 'L' }, spread: '2' },
})
const rinse = { feeds: 'final-rinse' } as const
const change = { before: exactly(booster.before_ppm, 'ppm-vv'), after: exactly(booster.after_ppm, 'ppm-vv') }

describe('the booster a rinse product goes through', () => {
  it('holds water from before for six racks of 3 L when it holds 6 L', () => {
    const lag = boosterOfPump(door, rinse, null)
    expect(good(lag?.racksBeforeTest ?? { ok: true, value: 0 })).toBe(6)
    expect(lag?.change).toBeNull()
  })

  it('shows a change rack by rack as worked by hand', () => {
    const found = boosterOfPump(door, rinse, change)?.change
    if (found === undefined || found === null) throw new Error('no change')
    const { strengths } = good(found)
    for (const [rack, ppm] of Object.entries(booster.rows))
      expect(
        Math.abs((strengths.find((one) => one.rack === Number(rack))?.strength ?? NaN) - ppm),
      ).toBeLessThanOrEqual(booster.tolerance)
    expect(strengths.at(-1)?.rack).toBe(6)
  })

  it('keeps to a dozen rows for a booster of fifty racks, the first and the last among them', () => {
    const large = { ...door, boosterVolume: { value: '50', unit: 'L' } as const }
    const found = boosterOfPump(large, rinse, change)?.change
    if (found === undefined || found === null) throw new Error('no change')
    const racks = good(found).strengths.map((one) => one.rack)
    expect(racks.length).toBeLessThanOrEqual(14)
    expect(racks[0]).toBe(0)
    expect(racks.at(-1)).toBe(50)
  })

  it('is none for a pump that feeds a tank, and asks for the volume where it is not recorded', () => {
    expect(boosterOfPump(door, { feeds: 'wash-tank' }, null)).toBeNull()
    expect(boosterOfPump({ ...door, boosterVolume: null }, rinse, null)?.racksBeforeTest).toMatchObject({
      ok: false,
      problem: { code: 'missing', needed: 'booster-volume' },
    })
  })

  it('shows its working as a sum anyone can redo', () => {
    const working = good(explainBooster(door))
    expect(Math.ceil(arithmetic(working.substituted))).toBe(6)
  })
})
