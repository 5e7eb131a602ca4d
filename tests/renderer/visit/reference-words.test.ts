import { describe, expect, it } from 'vitest'
import type { SiteCheckReference } from '#core/cautions/site-checks'
import { referenceWords } from '#renderer/screens/visit/conditions/reference-words.ts'

const limit = (bound: 'min' | 'max', value: number, unit: 'psi' | 'kPa'): SiteCheckReference => ({
  bound,
  figures: [{ value, unit }],
  from: 'data-plate',
  source: 'data plate',
})

describe('what a condition is held against', () => {
  it('is given in the unit the rep reads too, beside the one it is printed in', () => {
    // 1 psi is 6.894757 kPa (NIST SP 811, appendix B.8): 25 psi is 172.4, 95 psi is 655.0 kPa
    expect(referenceWords([limit('min', 25, 'psi'), limit('max', 95, 'psi')], 'point', 'kPa')).toBe(
      'at least 25 psi (172 kPa), at most 95 psi (655 kPa)',
    )
  })

  it('is not said twice where both are the same', () => {
    expect(referenceWords([limit('min', 103, 'kPa')], 'point', 'kPa')).toBe('at least 103 kPa')
    expect(referenceWords([limit('min', 20, 'psi')], 'point', null)).toBe('at least 20 psi')
  })
})
