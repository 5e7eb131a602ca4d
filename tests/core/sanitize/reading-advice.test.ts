import { describe, expect, it } from 'vitest'
import type { Reading, ReadingKind } from '#core/records/index'
import { SHIPPED_LIMITS } from '#core/sanitize/code-limit-table'
import { readingAdvice } from '#core/sanitize/reading-advice'
import { good } from '../tank/support'
import { machine } from './records'

const reading = (kind: ReadingKind, value: string, unit: 'degC' | 'degF' | 'psi' | 'kPa'): Reading => ({
  id: `${kind}-1`,
  machineId: machine().id,
  kind,
  at: '2026-03-09T14:05:00.000Z',
  value: { value, unit },
  count: null,
})
const standings = (m: ReturnType<typeof machine>, each: Reading) =>
  readingAdvice(m, [each], SHIPPED_LIMITS).flatMap((advice) =>
    good(advice.comparisons).map((one) => [one.limit.id, one.standing]),
  )

describe('temperature and pressure readings', () => {
  it('holds a door machine’s rinse against 180 and 194 °F', () => {
    expect(standings(machine(), reading('rinse-temperature', '178', 'degF'))).toEqual([
      ['rinse-temperature-other', 'misses'],
      ['rinse-temperature-max', 'meets'],
    ])
    expect(standings(machine(), reading('rinse-temperature', '91', 'degC'))).toContainEqual([
      'rinse-temperature-max',
      'misses',
    ])
  })

  it('shows the data plate first and keeps the code beside it', () => {
    const plate = {
      ...machine().dataPlate,
      rinsePressureMin: { value: '15', unit: 'psi' as const },
      rinsePressureMax: { value: '25', unit: 'psi' as const },
    }
    expect(standings(machine({ dataPlate: plate }), reading('rinse-pressure', '28', 'psi'))).toEqual([
      ['data-plate', 'meets'],
      ['data-plate', 'misses'],
      ['rinse-pressure-min', 'meets'],
      ['rinse-pressure-max', 'meets'],
    ])
  })

  it('asks the ware of a hot-water machine for 160 °F at its surface, and a chemical machine’s for nothing', () => {
    expect(standings(machine(), reading('ware-temperature', '71', 'degC'))).toEqual([
      ['ware-temperature-min', 'meets'],
    ])
    expect(standings(machine({ sanitizing: 'chemical' }), reading('ware-temperature', '50', 'degC'))).toEqual(
      [],
    )
  })

  it.each([
    ['door', 'hot-water', '149', 'misses'],
    ['door', 'hot-water', '150', 'meets'],
    ['conveyor-single-tank', 'hot-water', '159', 'misses'],
    ['conveyor-multi-tank', 'hot-water', '150', 'meets'],
    ['undercounter', 'chemical', '120', 'meets'],
    ['undercounter', 'chemical', '119', 'misses'],
  ] as const)('%s, %s: a wash of %s °F %s', (kind, sanitizing, degF, expected) => {
    const m = machine({ class: kind, sanitizing })
    expect(standings(m, reading('wash-temperature', degF, 'degF'))[0]?.[1]).toBe(expected)
  })

  it('says what is wrong with a reading that does not read, and leaves other machines’ readings alone', () => {
    const [first] = readingAdvice(machine(), [reading('rinse-temperature', 'hot', 'degF')], SHIPPED_LIMITS)
    expect(first?.comparisons).toMatchObject({
      ok: false,
      problem: { code: 'number-unreadable', field: 'reading.rinse-temperature' },
    })
    const other = { ...reading('rinse-temperature', '178', 'degF'), machineId: 'another' }
    expect(readingAdvice(machine(), [other], SHIPPED_LIMITS)).toEqual([])
  })
})
