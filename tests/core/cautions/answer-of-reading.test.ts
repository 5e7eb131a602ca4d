import { describe, expect, it } from 'vitest'
import { answerOfReading } from '#core/cautions/answer-of-reading'
import { siteChecks } from '#core/cautions/site-checks'
import { codeLimits } from '#core/sanitize/code-limits'
import { machine } from '#tests/core/sanitize/records'

const rowOf = (check: string, m = machine()) => {
  const found = siteChecks(m, codeLimits(null)).find((row) => row.check === check)
  if (found === undefined) throw new Error(`no ${check}`)
  return found
}

describe('what a reading answers by itself', () => {
  // 25 to 95 psi: common practice, no source; 1 psi = 6.894757 kPa (NIST SP 811, B.8)
  it.each([
    ['24.9', 'psi', 'not-ok'],
    ['25', 'psi', 'ok'],
    ['95', 'psi', 'ok'],
    ['96', 'psi', 'not-ok'],
    ['170', 'kPa', 'not-ok'],
    ['173', 'kPa', 'ok'],
    ['6.5', 'bar', 'ok'],
    ['6.6', 'bar', 'not-ok'],
  ] as const)('a supply pressure of %s %s is %s', (value, unit, expected) => {
    expect(answerOfReading(rowOf('supply-pressure'), { value, unit })).toBe(expected)
  })

  it('holds a reading against the data plate where one is recorded', () => {
    const plate = { ...machine().dataPlate, rinsePressureMin: { value: '15', unit: 'psi' as const } }
    const row = rowOf('rinse-pressure', machine({ dataPlate: plate }))
    expect(answerOfReading(row, { value: '2', unit: 'psi' })).toBe('not-ok')
    expect(answerOfReading(row, { value: '18', unit: 'psi' })).toBe('ok')
  })

  it('answers nothing without a reading, a figure, or from what does not read', () => {
    const pressure = rowOf('supply-pressure')
    expect(answerOfReading(pressure, null)).toBeNull()
    expect(answerOfReading(pressure, { value: '', unit: 'psi' })).toBeNull()
    expect(answerOfReading(pressure, { value: '60', unit: 'degC' })).toBeNull()
    expect(answerOfReading({ ...pressure, references: [] }, { value: '30', unit: 'psi' })).toBeNull()
    const blank = { ...machine().dataPlate, rinsePressureMin: { value: '', unit: 'psi' as const } }
    const row = rowOf('rinse-pressure', machine({ dataPlate: blank }))
    expect(answerOfReading(row, { value: '18', unit: 'psi' })).toBeNull()
  })
})
