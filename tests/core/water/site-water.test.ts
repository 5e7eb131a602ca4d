import { describe, expect, it } from 'vitest'
import type { Water } from '#core/records/index'
import { saturation } from '#core/water/saturation'
import { siteWater } from '#core/water/site-water'
import { good } from '../tank/support'

const nothing: Water = {
  hardness: null,
  solids: null,
  conductivity: null,
  alkalinity: null,
  calcium: null,
  pH: null,
  temperature: null,
  softener: 'unknown',
}
const recorded: Water = {
  ...nothing,
  hardness: { value: '12', unit: 'deg-dH' },
  conductivity: { value: '520', unit: 'uS/cm' },
  alkalinity: { value: '120', unit: 'mg/L-CaCO3' },
  calcium: { value: '150', unit: 'mg/L-CaCO3' },
  pH: '7.5',
  temperature: { value: '15', unit: 'degC' },
}

describe('a site’s water', () => {
  it('is judged at the rinse temperature: 82 °C scales where the tap does not', () => {
    const cold = good(siteWater(recorded, null).index)
    const hot = good(siteWater(recorded, { value: '180', unit: 'degF' }).index)
    expect(cold.tendency).toBe('dissolves-scale')
    expect(hot.tendency).toBe('leaves-scale')
    const direct = saturation({
      pH: 7.5,
      celsius: (180 - 32) / 1.8,
      solids: 332.8,
      calcium: 150,
      alkalinity: 120,
    })
    expect(hot.langelier).toBeCloseTo(good(direct).langelier, 9)
  })

  it('takes solids as measured before it takes them from conductivity', () => {
    expect(siteWater(recorded, null).solidsFrom).toBe('conductivity')
    const measured = siteWater({ ...recorded, solids: { value: '350', unit: 'mg/L' } }, null)
    expect(measured.solidsFrom).toBe('measured')
    expect(good(measured.residue)).toEqual({ sheeted: 0.035, beaded: 0.175 })
  })

  it('lets the hardness stand in for calcium and says so', () => {
    const found = siteWater({ ...recorded, calcium: null }, null)
    expect(found.calciumFromHardness).toBe(true)
    expect(found.index.ok).toBe(true)
  })

  it('names what is missing, part by part', () => {
    const found = siteWater(nothing, null)
    expect(found.hardness).toMatchObject({ ok: false, problem: { field: 'water.hardness', needed: 'water' } })
    expect(found.solids).toMatchObject({ ok: false, problem: { field: 'water.solids' } })
    expect(found.index).toMatchObject({ ok: false, problem: { field: 'water.pH' } })
    expect(found.residue.ok).toBe(false)
  })
})
