import { describe, expect, it } from 'vitest'
import type { Water } from '#core/records/index'
import { indexNeeds } from '#renderer/screens/water/water-words.ts'

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

describe('what the scale index still needs', () => {
  it('is one request that lists everything', () => {
    expect(indexNeeds(nothing, false)).toBe(
      'The scale index needs pH, alkalinity, calcium or hardness, dissolved solids or conductivity and the temperature. Enter what is known of the supply.',
    )
  })
  it('takes hardness for calcium and the rinse for the temperature', () => {
    const known: Water = {
      ...nothing,
      hardness: { value: '10', unit: 'deg-dH' },
      conductivity: { value: '400', unit: 'uS/cm' },
      pH: '7.5',
    }
    expect(indexNeeds(known, true)).toContain('needs alkalinity.')
    expect(indexNeeds({ ...known, alkalinity: { value: '100', unit: 'mg/L-CaCO3' } }, true)).toBe('')
  })
})
