import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { labelBreachSentence } from '#core/messages/label-words'
import type { TargetWindow } from '#core/records/index'
import { windowOutsideLabel } from '#core/sanitize/window-outside-label'
import { product } from '../../support/make-site'

const rinse = { kind: 'measured', perRack: { value: '4.5', unit: 'L' }, spread: null } as const
const bleach = product({
  role: 'sanitizer',
  strength: { kind: 'trade-percent', percent: '10', measuredOn: null },
  labelLimits: { basis: 'mg-per-L-active', low: '50', high: '100' },
})
const window = (
  low: string,
  target: string,
  high: string,
  basis: TargetWindow['basis'] = 'mg-per-L-active',
) => ({ basis, low, target, high }) satisfies TargetWindow
const context = { rinse, product: bleach }

/** Below, inside, above, as 0, 1, 2. */
const placeOf = (value: number): number => {
  const side = windowOutsideLabel(window(`${value}`, `${value}`, `${value}`), context)?.side
  return side === undefined ? 1 : side === 'above' ? 2 : 0
}

describe('a window beside what the label allows', () => {
  it.each([
    ['60', '75', '90', null],
    ['50', '75', '100', null],
    ['60', '110', '120', { edge: 'target', side: 'above', limit: '100' }],
    ['30', '40', '50', { edge: 'target', side: 'below', limit: '50' }],
    ['60', '95', '105', { edge: 'high', side: 'above', limit: '100' }],
    ['45', '55', '60', { edge: 'low', side: 'below', limit: '50' }],
  ] as const)('%s to %s to %s: named by the first number that leaves it', (low, target, high, expected) => {
    const found = windowOutsideLabel(window(low, target, high), context)
    if (expected === null) expect(found).toBeNull()
    else expect(found).toEqual({ ...expected, basis: 'mg-per-L-active' })
  })

  // by hand: 10 g active in 100 mL, so 1 mL brings 100 mg into 4.5 L, 22.2 mg/L: 2.25 mL are 50 and 4.5 mL are 100
  it.each([
    ['2.3', '3', '4.4', null],
    ['2.3', '3', '4.6', 'high'],
    ['2.2', '3', '4.4', 'low'],
    ['2.3', '4.6', '5', 'target'],
  ] as const)(
    'in mL a rack it is compared by strength and rinse water: %s, %s, %s',
    (low, target, high, edge) => {
      const found = windowOutsideLabel(window(low, target, high, 'mL-per-rack'), context)
      expect(found?.edge ?? null).toBe(edge)
    },
  )

  it('nothing is said where the label, the window, the water or the strength is not known', () => {
    const far = window('300', '400', '500', 'mL-per-rack')
    expect(windowOutsideLabel(null, context)).toBeNull()
    expect(windowOutsideLabel(far, { rinse, product: null })).toBeNull()
    expect(windowOutsideLabel(far, { rinse, product: { ...bleach, labelLimits: null } })).toBeNull()
    expect(windowOutsideLabel(far, { rinse: null, product: bleach })).toBeNull()
    expect(windowOutsideLabel(far, { rinse, product: { ...bleach, strength: { kind: 'none' } } })).toBeNull()
    expect(windowOutsideLabel(far, context)?.edge).toBe('target')
  })

  it('raising a window never brings it back under a most it has passed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 190 }), fc.integer({ min: 0, max: 60 }), (target, more) => {
        expect(placeOf(target + more)).toBeGreaterThanOrEqual(placeOf(target))
      }),
    )
  })

  it('says which number, the label’s limit with its unit, and what to do', () => {
    const breach = windowOutsideLabel(window('60', '110', '120'), context)
    expect(breach === null ? '' : labelBreachSentence(breach, 'Hypo 10', 'comma')).toBe(
      'The target lies above what the label of Hypo 10 allows: at most 100 mg/L active. Lower it; the label decides how the product may be used.',
    )
  })
})
