import { describe, expect, it } from 'vitest'
import { strengthOverService } from '#core/tank/service'
import type { SettingNote } from '#core/tank/types'
import { boosterFinding, boosterTable } from '#renderer/screens/strength/booster-words.ts'
import { noteWords } from '#renderer/screens/strength/note-words.ts'
import { otherTankFinding, otherTankName } from '#renderer/screens/strength/other-tank-words.ts'
import { strengthFinding } from '#renderer/screens/strength/strength-finding.ts'
import { strengthTable } from '#renderer/screens/strength/strength-table.ts'
import { dump, tank } from '#tests/core/tank/support'
import { good } from '#tests/support/outcomes'

const window = { low: 1.8, high: 2.2 }
const day = (dose: number, charge: number, racks: number, fills = 1) =>
  good(strengthOverService({ model: tank(40, 3), dose, charge, racks, fills, window }))

describe('what a service is said to show', () => {
  it.each([
    ['a right setting', day(6, 80, 60), 'All 60 racks are washed inside the window.'],
    ['a recharge that is short', day(4.8, 80, 40), 'From rack 10 on it is below the window: 31 of 40 racks.'],
    ['a charge that is long', day(6, 120, 60), 'Racks 1 to 21 are washed above the window, of 60.'],
    [
      'a long charge after each of two fills',
      day(6, 120, 120, 2),
      '42 racks of 120 are washed above the window, the first of them rack 1.',
    ],
    ['no dose at all', day(0, 0, 30), 'All 30 racks are washed below the window.'],
  ])('%s', (_, series, words) => {
    expect(strengthFinding(series, window, 'point')).toContain(words)
  })

  it('names the one rack a dump-and-refill machine washes weak after opening', () => {
    const series = good(
      strengthOverService({
        model: dump(0.6, 4.467),
        dose: 8.5,
        charge: 0,
        racks: 140,
        fills: 1,
        window: { low: 1.7, high: 2.1 },
      }),
    )
    expect(strengthFinding(series, window, 'point')).toContain('Only rack 1 is washed below the window.')
  })

  it('says where it heads, in the decimal sign of the installation, when there is no window', () => {
    expect(strengthFinding(day(4.8, 80, 40), null, 'comma')).toBe(
      'The wash starts at 2,00 g/L and heads for 1,60 g/L. No window is set to hold it against.',
    )
  })
})

describe('the second of two tanks', () => {
  const other = day(0, 0, 40)
  const rising = day(6, 0, 40)

  it('is told by name, with where it starts and heads', () => {
    expect(otherTankFinding({ which: 'upstream-tank', fedBy: null }, other, 'point')).toBe(
      'The second tank gets fresh rinse water and none of this product.',
    )
    expect(otherTankFinding({ which: 'wash-tank', fedBy: null }, rising, 'comma')).toMatch(
      /^The wash tank, fed by what comes over, starts at 0 g\/L and heads for 2,00 g\/L\. \d+ of 40 racks go through it below the window\.$/u,
    )
    expect(
      otherTankFinding(
        { which: 'upstream-tank', fedBy: { pumpId: 'p', name: 'Soap two' } },
        day(6, 80, 40),
        'point',
      ),
    ).toBe('The second tank, with Soap two at its target, starts at 2.00 g/L and heads for 2.00 g/L.')
  })

  it('has a column of its own in the table, at the same moments', () => {
    const name = otherTankName({ which: 'wash-tank' })
    const { head, rows } = strengthTable(day(6, 80, 90, 3), 'point', {
      series: day(6, 0, 90, 3),
      name,
      own: 'Second tank',
    })
    expect(head[1]).toBe('Second tank, g/L')
    expect(head.at(-1)).toBe('Wash tank, g/L')
    expect(rows.every((row) => row.length === 5)).toBe(true)
    expect(rows.find((row) => row[0] === 'fill at rack 30')?.at(-1)).toBe('0')
    expect(Number(rows.find((row) => row[0] === 'rack 30')?.at(-1))).toBeGreaterThan(1.7)
  })
})

describe('a change of dose through the booster', () => {
  const change = {
    before: 300,
    after: 500,
    strengths: [
      { rack: 0, strength: 300 },
      { rack: 1, strength: 378.7 },
      { rack: 6, strength: 490 },
    ],
  }

  it('is told from what it was to what has come through', () => {
    expect(boosterFinding(change, 'point')).toBe(
      'Changed from 300 to 500 ppm: 379 ppm leaves the booster after 1 rack, 490 ppm after 6 racks.',
    )
    expect(boosterTable(change, 'comma').rows).toEqual([
      ['the change', '300,0'],
      ['1 rack', '378,7'],
      ['6 racks', '490,0'],
    ])
  })
})

describe('the table behind the picture', () => {
  it('keeps every fill, the rack before it and the last one', () => {
    const { rows } = strengthTable(day(4.8, 80, 90, 3), 'point')
    const names = rows.map((row) => row[0])
    expect(names).toEqual(
      expect.arrayContaining(['first fill', 'rack 30', 'fill at rack 30', 'rack 60', 'rack 90']),
    )
    expect(rows.every((row) => row.length === 4)).toBe(true)
    expect(rows.length).toBeLessThan(25)
  })
})

describe('what stands out about a setting', () => {
  const notes: readonly SettingNote[] = [
    { code: 'no-initial-charge-needed' },
    { code: 'no-initial-charge-on-this-machine' },
    { code: 'tank-replaced-each-rack', netWater: 5, volume: 2 },
    { code: 'recharge-too-short', seconds: 0.25, pulses: 0.5, flowForLonger: 300 },
    { code: 'recharge-too-short', seconds: 0.25, pulses: null, flowForLonger: 300 },
    { code: 'cannot-keep-up', seconds: 75, cycleSeconds: 60 },
    { code: 'carried-out-not-known' },
    { code: 'probe-holds-it' },
  ]
  it.each(notes.map((note) => [note.code, note] as const))('%s has a sentence', (_, note) => {
    expect(noteWords(note, 'point')).toMatch(/^[A-Z].*\.$/)
  })
})
