import { describe, expect, it } from 'vitest'
import { explainWater } from '#core/explain/water'
import type { Water } from '#core/records/index'
import { arithmetic } from '#tests/support/arithmetic'
import { good } from '#tests/support/outcomes'

const water: Water = {
  hardness: { value: '12', unit: 'deg-dH' },
  solids: null,
  conductivity: { value: '0.52', unit: 'mS/cm' },
  alkalinity: { value: '120', unit: 'mg/L-CaCO3' },
  calcium: null,
  pH: '7.5',
  temperature: null,
  softener: 'fitted',
}

describe('the working of a site’s water', () => {
  it.each(['hardness', 'solids', 'langelier', 'ryznar', 'residue'] as const)(
    'shows %s as a sum anyone can redo',
    (part) => {
      const working = good(explainWater(water, { value: '82', unit: 'degC' })[part])
      expect(Math.abs(arithmetic(working.substituted) - working.result.value)).toBeLessThan(
        2e-4 * Math.max(1, Math.abs(working.result.value)),
      )
    },
  )

  it('says that the survey leaves gaps, that calcium was not measured, and that held water is assumed', () => {
    const workings = explainWater(water, { value: '82', unit: 'degC' })
    expect(good(workings.hardness).assumptions.join(' ')).toMatch(/gaps/)
    expect(good(workings.langelier).assumptions.join(' ')).toMatch(/stands in for calcium/)
    expect(good(workings.residue).assumptions.join(' ')).toMatch(/Nobody has published/)
  })

  it('leaves out the factor where solids were measured', () => {
    const measured = { ...water, solids: { value: '350', unit: 'mg/L' as const } }
    expect(good(explainWater(measured, null).solids).formula).toBe('S = reading')
  })
})
