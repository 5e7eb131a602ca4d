import { describe, expect, it } from 'vitest'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import { CODE_LIMIT_IDS, SHIPPED_LIMITS } from '#core/sanitize/code-limit-table'
import { codeLimits } from '#core/sanitize/code-limits'
import { LIMIT_GROUPS, limitWords } from '#renderer/screens/code-limits/limit-groups.ts'
import { localFigure, putLocalFigure, unitsOfLimit } from '#renderer/screens/code-limits/local-figure.ts'

const rinse = SHIPPED_LIMITS['rinse-temperature-other']

describe('the list of code figures', () => {
  it('shows every limit exactly once', () => {
    const shown = LIMIT_GROUPS.flatMap((group) => group.limits.map((limit) => limit.id))
    expect(shown.toSorted()).toEqual([...CODE_LIMIT_IDS].toSorted())
  })

  it('writes them as the code does, both units beside each other', () => {
    expect(limitWords(rinse, 'point')).toBe('at least 180 °F (82 °C)')
    expect(limitWords(SHIPPED_LIMITS['iodine-min'], 'comma')).toBe('at least 12,5 mg/L active')
    expect(limitWords(SHIPPED_LIMITS['chlorine-pH-max'], 'point')).toBe('at most pH 10')
  })
})

const put = (value: string, unit: 'degF' | 'degC', before = DEFAULT_SETTINGS) =>
  putLocalFigure(before, rinse, { figure: { value, unit }, source: 'county rule' })

describe('a local figure', () => {
  it('takes the place of the shipped one in the unit it was typed in, and can be read back', () => {
    const settings = put('85', 'degC')
    expect(codeLimits(settings)['rinse-temperature-other'].figures).toEqual([{ value: 85, unit: 'degC' }])
    expect(localFigure(settings, rinse)).toEqual({
      figure: { value: '85', unit: 'degC' },
      source: 'county rule',
    })
  })

  it('leaves no earlier one behind when its unit changes', () => {
    const settings = put('185', 'degF', put('85', 'degC'))
    expect(settings.codeLimits).toHaveLength(1)
    expect(codeLimits(settings)['rinse-temperature-other'].figures).toEqual([{ value: 185, unit: 'degF' }])
  })

  it('gives way to the shipped figure when it is taken out', () => {
    expect(codeLimits(putLocalFigure(put('85', 'degC'), rinse, null))).toEqual(SHIPPED_LIMITS)
  })

  it('is not mistaken for that of a limit whose name begins alike', () => {
    const settings = put('185', 'degF')
    expect(localFigure(settings, SHIPPED_LIMITS['rinse-temperature-max'])).toBeNull()
    expect(unitsOfLimit(rinse)).toEqual(['degF', 'degC'])
  })
})
