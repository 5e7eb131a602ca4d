import { describe, expect, it } from 'vitest'
import { explainAged, explainLimit } from '#core/explain/sanitize'
import { SHIPPED_LIMITS } from '#core/sanitize/code-limit-table'
import { compareWithLimit } from '#core/sanitize/compare'
import { arithmetic } from '#tests/support/arithmetic'
import { good } from '#tests/support/outcomes'

const held = (
  value: string,
  unit: 'degF' | 'psi',
  id: 'rinse-temperature-other' | 'rinse-pressure-max',
  width = 0,
) => explainLimit(good(compareWithLimit({ value, unit }, SHIPPED_LIMITS[id], 'reading', width)))

describe('the working of a comparison with a code', () => {
  it('writes down which way it stands, the room left, the section, and that it is advice', () => {
    const working = held('178', 'degF', 'rinse-temperature-other')
    expect(working.substituted).toBe('178 < 180')
    expect(working.result).toMatchObject({ value: -2, unit: '°F' })
    expect(working.source).toMatch(/4-501\.112/)
    expect(working.assumptions.join(' ')).toMatch(/not a verdict/)
  })

  it.each([
    ['182', 'degF', 'rinse-temperature-other', '182 ≥ 180'],
    ['28', 'psi', 'rinse-pressure-max', '28 ≤ 30'],
    ['31', 'psi', 'rinse-pressure-max', '31 > 30'],
  ] as const)('%s %s: %s', (value, unit, id, expected) => {
    expect(held(value, unit, id).substituted).toBe(expected)
  })

  it('says when the instrument cannot tell', () => {
    expect(held('181', 'degF', 'rinse-temperature-other', 3).assumptions[0]).toMatch(/off by more/)
  })
})

describe('the working of an aged chlorine', () => {
  it('can be redone, and says that it is an estimate', () => {
    const working = good(explainAged(10, 40, 25))
    expect(1 / arithmetic(working.substituted)).toBeCloseTo(working.result.value, 3)
    expect(working.assumptions[0]).toMatch(/estimate/)
    expect(good(explainAged(10, 0, 25)).result.value).toBe(10)
  })
})
