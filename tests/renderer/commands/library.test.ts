import { describe, expect, it } from 'vitest'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import {
  instrument as instrumentSchema,
  product as productSchema,
  settings as settingsSchema,
} from '#core/documents/library-schema'
import { entry } from '#core/units/entry'
import * as library from '#renderer/commands/library.ts'

const A = '00000000-0000-4000-8000-00000000000a'
const B = '00000000-0000-4000-8000-00000000000b'
const litres = entry('5', 'L')
const row = (from: string, price: string) => ({ from, price, currency: 'EUR', containerSize: litres })

describe('glass cylinders', () => {
  // ASTM E1272-02(2012) Table 1, as read: capacity, class A, class B, ± mL
  it.each([
    [10, '0.1', '0.2'],
    [25, '0.17', '0.34'],
    [50, '0.25', '0.5'],
    [100, '0.5', '1'],
    [250, '1', '2'],
    [500, '2', '4'],
  ])('of %s mL may be off by %s mL in class A and %s mL in class B', (size, a, b) => {
    expect(library.newCylinder(A, size, 'A').tolerance).toEqual(entry(a, 'mL'))
    expect(library.newCylinder(A, size, 'B').tolerance).toEqual(entry(b, 'mL'))
    expect(library.cylinderClassOf(library.newCylinder(A, size, 'A'))).toBe('A')
    expect(instrumentSchema.safeParse(library.newCylinder(A, size, 'B')).success).toBe(true)
  })

  it('get the tolerance of their class in whatever unit their size was entered', () => {
    const litre = {
      ...library.newInstrument({ id: A, name: 'x', kind: 'cylinder' }),
      capacity: entry('0.25', 'L'),
    }
    expect(library.withCylinderClass(litre, 'B').tolerance).toEqual(entry('2', 'mL'))
  })

  it('keep the marks that were entered', () => {
    const marked = { ...library.newCylinder(A, 100, 'B'), graduation: entry('2', 'mL') }
    expect(library.withCylinderClass(marked, 'A').graduation).toEqual(entry('2', 'mL'))
  })

  it('stay as they are without a size', () => {
    const bare = library.newInstrument({ id: A, name: 'x', kind: 'cylinder' })
    expect(library.withCylinderClass(bare, 'A')).toBe(bare)
    expect(library.cylinderClassOf(bare)).toBeNull()
  })
})

describe('products', () => {
  it('begin with hazards their role makes likely, and can be saved as they stand', () => {
    for (const role of ['rinse-aid', 'detergent', 'sanitizer', 'delimer', 'other'] as const)
      expect(productSchema.safeParse(library.newProduct({ id: A, name: role, role })).success).toBe(true)
    expect(library.newProduct({ id: A, name: 'x', role: 'delimer' }).hazards).toContain('acid')
  })

  it('keep their prices in order of the day they hold from', () => {
    let list = library.addProduct([], { id: A, name: 'x', role: 'detergent' })
    list = library.addPrice(list, A, row('2026-05-01', '20'))
    list = library.addPrice(list, A, row('2025-01-01', '18'))
    expect(list[0]?.prices.map(({ price }) => price)).toEqual(['18', '20'])
    list = library.changePrice(list, A, 0, { from: '2026-09-01' })
    expect(list[0]?.prices.map(({ price }) => price)).toEqual(['20', '18'])
    expect(library.removePrice(list, A, 1)[0]?.prices.map(({ price }) => price)).toEqual(['20'])
  })

  it('tick and untick a hazard without counting it twice', () => {
    let list = library.addProduct([], { id: A, name: 'x', role: 'other' })
    for (const has of [true, true]) list = library.toggleHazard(list, A, 'chlorine', has)
    expect(list[0]?.hazards).toEqual(['chlorine'])
    expect(library.toggleHazard(list, A, 'chlorine', false)[0]?.hazards).toEqual([])
  })

  it('give the same list back when the product is not there', () => {
    const list = library.addProduct([], { id: A, name: 'x', role: 'other' })
    expect(library.changeProduct(list, B, { name: 'y' })).toBe(list)
    expect(library.removeProduct(list, B)).toBe(list)
  })
})

describe('settings', () => {
  it('replace a caution’s wording once, and bring the shipped one back when emptied', () => {
    let settings = library.setCautionText(DEFAULT_SETTINGS, 'scald', 'Hot.')
    settings = library.setCautionText(settings, 'scald', 'Very hot.')
    expect(settings.cautionTexts).toEqual([{ caution: 'scald', text: 'Very hot.' }])
    expect(settingsSchema.safeParse(settings).success).toBe(true)
    expect(library.setCautionText(settings, 'scald', '  ').cautionTexts).toEqual([])
  })

  it('replace a code limit and drop it again', () => {
    const settings = library.setCodeLimit(DEFAULT_SETTINGS, 'x', { value: '50', source: 'county code' })
    expect(settings.codeLimits).toEqual([{ limit: 'x', value: '50', source: 'county code' }])
    expect(library.setCodeLimit(settings, 'x', null).codeLimits).toEqual([])
  })
})
