import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CODE_LIMIT_IDS, SHIPPED_LIMITS } from '#core/sanitize/code-limit-table'
import { codeLimits } from '#core/sanitize/code-limits'
import { compareWithLimit } from '#core/sanitize/compare'
import { halfWidthOf } from '#core/sanitize/device-accuracy'
import type { CodeLimitId } from '#core/sanitize/types'
import type { Entry, Instrument } from '#core/records/index'
import reference from '../../references/food-code.json'
import { everyNumberFinite, good } from '../tank/support'

const facts = (id: string): readonly Record<string, unknown>[] => {
  const found = reference.entries.find((entry) => entry.id === id)
  return (found?.facts ?? []) as readonly Record<string, unknown>[]
}
const figures = (id: CodeLimitId) => SHIPPED_LIMITS[id].figures.map((figure) => figure.value)
const entry = (value: string, unit: Entry['unit']): Entry => ({ value, unit })

// Every figure: tests/references/food-code.json, which says where each was read.
describe('the shipped limits are those the code prints, in both unit systems', () => {
  it.each([
    ['wash-temperature-stationary-single', 0],
    ['wash-temperature-stationary-dual', 1],
    ['wash-temperature-single-tank-conveyor', 2],
    ['wash-temperature-multi-tank-conveyor', 3],
    ['wash-temperature-chemical', 4],
  ] as const)('%s', (id, row) => {
    const fact = facts('wash_temp')[row]
    expect(figures(id)).toEqual([fact?.['wash_min_F'], fact?.['wash_min_C']])
  })

  it('rinse at the manifold, pressure, ware surface, air gap', () => {
    const [most, single, other] = facts('hot_water_rinse')
    expect(figures('rinse-temperature-max')).toEqual([
      most?.['max_at_manifold_F'],
      most?.['max_at_manifold_C'],
    ])
    expect(figures('rinse-temperature-stationary-single')).toEqual([single?.['min_F'], single?.['min_C']])
    expect(figures('rinse-temperature-other')).toEqual([other?.['min_F'], other?.['min_C']])
    const [pressure] = facts('rinse_pressure')
    expect(figures('rinse-pressure-min')).toEqual([pressure?.['min_psi'], pressure?.['min_kPa']])
    expect(figures('rinse-pressure-max')).toEqual([pressure?.['max_psi'], pressure?.['max_kPa']])
    const [surface] = facts('surface_temp')
    expect(figures('ware-temperature-min')).toEqual([
      surface?.['utensil_surface_F'],
      surface?.['utensil_surface_C'],
    ])
    const [gap] = facts('air_gap')
    expect(figures('drain-air-gap-min')).toEqual([gap?.['floor_in'], gap?.['floor_mm']])
  })

  it('iodine, quat, contact times, and what may stay on ware', () => {
    const [iodine] = facts('iodine')
    expect(figures('iodine-min')).toEqual([iodine?.['mg_per_L_min']])
    expect(figures('iodine-max')).toEqual([iodine?.['mg_per_L_max']])
    expect(figures('iodine-temperature')).toEqual([iodine?.['min_F'], iodine?.['min_C']])
    expect(figures('iodine-pH-max')).toEqual([iodine?.['pH_max']])
    const [quat] = facts('quat')
    expect(figures('quat-temperature')).toEqual([quat?.['min_F'], quat?.['min_C']])
    expect(figures('quat-hardness-max')).toEqual([quat?.['water_hardness_max_mg_per_L']])
    const [manual, general, short, other] = facts('contact_time')
    expect(figures('hot-water-contact-manual')).toEqual([manual?.['hot_water_manual_s']])
    expect(figures('chlorine-contact')).toEqual([general?.['chlorine_general_s']])
    expect(figures('chlorine-contact-short')).toEqual([short?.['chlorine_50_mgL_s']])
    expect(figures('other-contact')).toEqual([other?.['other_chemicals_s']])
    const [chlorine] = facts('residue_limits')
    expect(figures('chlorine-max')).toEqual([chlorine?.['hypochlorites_available_chlorine_max_ppm']])
  })

  it('says for every limit where it comes from', () => {
    for (const id of CODE_LIMIT_IDS) expect(SHIPPED_LIMITS[id].source.length).toBeGreaterThan(15)
  })
})

const rinseAt = (value: string) =>
  good(compareWithLimit(entry(value, 'degF'), SHIPPED_LIMITS['rinse-temperature-other'], 'reading', 3))

describe('a reading is compared in the unit it was read in', () => {
  const rinse = SHIPPED_LIMITS['rinse-temperature-other']
  const standing = (value: string, unit: Entry['unit'], limit = rinse) =>
    good(compareWithLimit(entry(value, unit), limit, 'reading')).standing

  it('82 °C meets 82 °C although it is 179.6 °F, and 179.6 °F does not meet 180 °F', () => {
    expect(standing('82', 'degC')).toBe('meets')
    expect(standing('179.6', 'degF')).toBe('misses')
    expect(standing('180', 'degF')).toBe('meets')
    expect(standing('81.9', 'degC')).toBe('misses')
  })

  // 5 psi is 34.47 kPa, printed as 35; 30 psi is 206.84 kPa, printed as 200 (food-code.json)
  it('a pressure at the printed limit passes in either unit, and 34.5 kPa does not although it is 5 psi', () => {
    const least = SHIPPED_LIMITS['rinse-pressure-min']
    const most = SHIPPED_LIMITS['rinse-pressure-max']
    expect(standing('5', 'psi', least)).toBe('meets')
    expect(standing('35', 'kPa', least)).toBe('meets')
    expect(standing('34.5', 'kPa', least)).toBe('misses')
    expect(standing('30', 'psi', most)).toBe('meets')
    expect(standing('206', 'kPa', most)).toBe('misses')
  })

  it('a unit the code does not print is converted into the governing one: 0.35 bar is 5.08 psi', () => {
    const advice = good(
      compareWithLimit(entry('0.35', 'bar'), SHIPPED_LIMITS['rinse-pressure-min'], 'reading'),
    )
    expect(advice.figure).toEqual({ value: 5, unit: 'psi' })
    expect(advice.reading).toBeCloseTo(5.0763, 4)
    expect(advice.standing).toBe('meets')
    expect(standing('0.34', 'bar', SHIPPED_LIMITS['rinse-pressure-min'])).toBe('misses')
  })

  it('says when the figure lies within what the thermometer may be off', () => {
    expect(rinseAt('182')).toMatchObject({ standing: 'meets', close: true })
    expect(rinseAt('178')).toMatchObject({ standing: 'misses', close: true })
    expect(rinseAt('184')).toMatchObject({ standing: 'meets', close: false })
  })

  it('carries a half-width in another unit over as a difference, without the offset of the scale', () => {
    const edited = codeLimits({
      codeLimits: [{ limit: 'rinse-temperature-other', value: '180', source: 'county rule' }],
    })['rinse-temperature-other']
    // 83 °C is 181.4 °F; 1.5 °C is 2.7 °F wide, 0.5 °C is 0.9 °F
    expect(good(compareWithLimit(entry('83', 'degC'), edited, 'reading', 1.5)).close).toBe(true)
    expect(good(compareWithLimit(entry('83', 'degC'), edited, 'reading', 0.5)).close).toBe(false)
  })

  it('refuses to compare a temperature with a pressure, and names what it expects', () => {
    expect(compareWithLimit(entry('20', 'psi'), rinse, 'reading')).toMatchObject({
      ok: false,
      problem: { code: 'unit-unknown', expected: ['degF', 'degC'] },
    })
    expect(compareWithLimit(null, rinse, 'reading')).toMatchObject({
      ok: false,
      problem: { code: 'number-missing' },
    })
  })

  it('answers any number and any unit with advice or a reason', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.double().map(String), fc.integer().map(String)),
        fc.constantFrom<Entry['unit']>('degC', 'degF', 'psi', 'kPa', 'bar', 'mL', 'pH'),
        fc.double(),
        fc.constantFrom(...CODE_LIMIT_IDS),
        (value, unit, width, id) => {
          expect(
            everyNumberFinite(compareWithLimit({ value, unit }, SHIPPED_LIMITS[id], 'reading', width)),
          ).toBe(true)
        },
      ),
    )
  })
})

const edits = (limit: string, value: string, source = '') =>
  codeLimits({ codeLimits: [{ limit, value, source }] })

describe('local code put in the settings', () => {
  it('replaces every printed figure, so that no reading is compared with the old one', () => {
    const limit = edits('rinse-temperature-other', '185', 'county rule 7')['rinse-temperature-other']
    expect(limit).toMatchObject({
      figures: [{ value: 185, unit: 'degF' }],
      source: 'county rule 7',
      how: 'settings',
    })
    expect(good(compareWithLimit(entry('84', 'degC'), limit, 'reading')).standing).toBe('misses')
  })

  it('may be written in another unit of the same kind', () => {
    expect(edits('rinse-temperature-other:degC', '85')['rinse-temperature-other'].figures).toEqual([
      { value: 85, unit: 'degC' },
    ])
  })

  it.each([
    ['a limit nobody knows', 'rinse-temperature', '185'],
    ['a unit of another kind', 'rinse-temperature-other:psi', '185'],
    ['a unit that is none', 'rinse-temperature-other:kelvin', '185'],
    ['a number that does not read', 'rinse-temperature-other', 'hot'],
  ])('passes over %s', (_, limit, value) => {
    expect(edits(limit, value)).toEqual(SHIPPED_LIMITS)
  })
})

describe('how far a reading may be off', () => {
  const thermometer: Instrument = {
    id: 't1',
    name: 'Probe',
    kind: 'thermometer',
    capacity: null,
    graduation: null,
    tolerance: { value: '0.9', unit: 'degF' },
    bore: null,
    checkedOn: null,
  }

  // Food Code 4-203.12 and -.13, from memory
  it('is what the code asks of the device when nobody says better', () => {
    expect([halfWidthOf('degC'), halfWidthOf('degF'), halfWidthOf('kPa'), halfWidthOf('psi')]).toEqual([
      1.5, 3, 14, 2,
    ])
  })

  it('is the tolerance of the one thermometer there is, as a difference', () => {
    expect(halfWidthOf('degC', [thermometer])).toBeCloseTo(0.5, 12)
    expect(halfWidthOf('degC', [thermometer, { ...thermometer, id: 't2' }])).toBe(1.5)
  })
})
