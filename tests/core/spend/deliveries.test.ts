import { describe, expect, it } from 'vitest'
import { guessColumns, rememberColumns, withColumn } from '#core/spend/delivery-columns'
import { dateOrderOf, readDay } from '#core/spend/delivery-day'
import { DeliveryReader, type DeliveryContext } from '#core/spend/delivery-rows'
import { aMovement, aProduct, id } from './build'

const product = aProduct({ name: 'Rinse aid, 10 L', containerSize: { value: '10', unit: 'L' } })
const columns = { date: 0, product: 1, containers: 2, size: 3, reference: 4 }
const read = (rows: readonly (readonly string[])[], over: Partial<DeliveryContext> = {}) => {
  const reader = new DeliveryReader({
    columns,
    order: 'day-first',
    decimalSign: 'point',
    products: [product],
    currency: 'EUR',
    today: '2026-03-31',
    booked: [],
    ...over,
  })
  rows.forEach((cells, index) => reader.add({ line: index + 2, cells }))
  return reader.reading
}
const goodRow = ['09/03/2026', 'rinse  AID, 10 l', '3', '', 'DN-1']

describe('a row of a delivery list', () => {
  it('becomes a delivery: the product found whatever its capitals and blanks, the size its own', () => {
    const reading = read([goodRow])
    expect(reading.problems).toEqual([])
    expect(reading.deliveries).toEqual([
      {
        line: 2,
        delivery: {
          on: '2026-03-09',
          productId: id(1),
          kind: 'delivery',
          fullContainers: '3',
          containerSize: { value: '10', unit: 'L' },
          part: null,
          tare: null,
          reference: 'DN-1',
          visitId: null,
        },
      },
    ])
  })

  it('may name its own container size, in litres or gallons', () => {
    const sizes = read([
      ['2026-03-09', product.name, '1', '5 gal', ''],
      ['2026-03-09', product.name, '1', '20', ''],
    ])
    expect(sizes.deliveries.map((one) => one.delivery.containerSize)).toEqual([
      { value: '5', unit: 'gal-us' },
      { value: '20', unit: 'L' },
    ])
  })

  it.each([
    [['', product.name, '1', '', ''], 'empty'],
    [['31.04.2026', product.name, '1', '', ''], 'day-unreadable'],
    [['soon', product.name, '1', '', ''], 'day-unreadable'],
    [['2027-01-01', product.name, '1', '', ''], 'day-in-future'],
    [['2026-03-09', 'Something else', '1', '', ''], 'product-unknown'],
    [['2026-03-09', '=cmd|x', '1', '', ''], 'product-unknown'],
    [['2026-03-09', product.name, '1.5', '', ''], 'not-whole'],
    [['2026-03-09', product.name, '-1', '', ''], 'not-whole'],
    [['2026-03-09', product.name, '0', '', ''], 'not-whole'],
    [['2026-03-09', product.name, '1e3', '', ''], 'number'],
    [['2026-03-09', product.name, '1,234', '', ''], 'number'],
    [['2026-03-09', product.name, '1', '0', ''], 'number'],
    [['2026-03-09', product.name, '1', '10 kg', ''], 'number'],
    [['2026-03-09', product.name, '1', '', 'x'.repeat(2000)], 'cell-too-long'],
    [['2026-03-09'], 'empty'],
  ])('%j is told by its line and yields no delivery (%s)', (cells, code) => {
    const reading = read([goodRow, cells])
    expect(reading.deliveries).toHaveLength(1)
    expect(reading.problems[0]).toMatchObject({ line: 3, fault: { code } })
  })

  it('is not guessed between two products of one name', () => {
    const twin = aProduct({ id: id(2), name: 'RINSE AID, 10 L' })
    expect(read([goodRow], { products: [product, twin] }).problems[0]).toMatchObject({
      line: 2,
      fault: { code: 'product-ambiguous' },
    })
  })

  it('that is booked already is left out, so that a list can be read in twice', () => {
    const first = read([goodRow])
    const booked = first.deliveries.map(({ delivery }, n) => ({ ...delivery, id: id(70 + n) }))
    const again = read([goodRow], { booked })
    expect(again.deliveries).toEqual([])
    expect(again.booked).toEqual([2])
  })

  it('written twice with one delivery note counts once; without a note both count', () => {
    expect(read([goodRow, goodRow])).toMatchObject({ booked: [3], deliveries: [{ line: 2 }] })
    const bare = ['2026-03-09', product.name, '1', '', '']
    expect(read([bare, bare]).deliveries).toHaveLength(2)
  })

  it('of empty cells is no row', () => {
    expect(read([['', ' ', '']])).toEqual({ deliveries: [], problems: [], booked: [], alike: [] })
  })

  it('does not take a count for a delivery', () => {
    const count = aMovement({ on: '2026-03-09', fullContainers: '3', reference: 'DN-1' })
    expect(read([goodRow], { booked: [count] }).deliveries).toHaveLength(1)
  })
})

describe('a day in a list', () => {
  it.each([
    ['2026-03-09', '2026-03-09'],
    ['2026-3-9', '2026-03-09'],
    ['9.3.26', '2026-03-09'],
    ['09/03/2026', '2026-03-09'],
    ['29.02.2024', '2024-02-29'],
    ['29.02.2026', 'unreadable'],
    ['0.3.2026', 'unreadable'],
    ['9-3', 'unreadable'],
  ])('%s is %s where the day comes first', (written, expected) => {
    expect(readDay(written, 'day-first')).toBe(expected)
  })

  it('with two small numbers is not guessed: the order must be known', () => {
    expect(readDay('09/03/2026', null)).toBe('order-unknown')
    expect(readDay('09/03/2026', 'month-first')).toBe('2026-09-03')
    expect(readDay('25/03/2026', null)).toBe('2026-03-25')
    expect(readDay('03/03/2026', null)).toBe('2026-03-03')
  })

  it('gives the order of its list away when one day can be read one way only', () => {
    expect(dateOrderOf(['01/02/2026', '25/02/2026'])).toBe('day-first')
    expect(dateOrderOf(['01/02/2026', '02/25/2026'])).toBe('month-first')
    expect(dateOrderOf(['01/02/2026', '2026-02-25'])).toBeNull()
    expect(dateOrderOf(['25/02/2026', '02/25/2026'])).toBeNull()
  })
})

describe('columns', () => {
  it('are found by headings in common use, each once', () => {
    expect(guessColumns(['Delivery date', 'Item', 'Qty', 'Pack size', 'Ref'], [])).toEqual({
      date: 0,
      product: 1,
      containers: 2,
      size: 3,
      reference: 4,
    })
  })

  it('are found as they were chosen last time, whatever they are called', () => {
    const before = { date: 2, product: 0, containers: 1, size: null, reference: null }
    const headings = ['Ware', 'Stk', 'Tag']
    const remembered = rememberColumns(before, headings)
    expect(guessColumns(['Tag', 'Ware', 'Stk'], remembered)).toEqual({
      date: 0,
      product: 1,
      containers: 2,
      size: null,
      reference: null,
    })
  })

  it('that nobody can tell are left open', () => {
    expect(guessColumns(['a', 'b'], [])).toMatchObject({ date: null, product: null })
  })
})

describe('rows that look alike without a delivery note', () => {
  const row = ['09/03/2026', product.name, '3', '', '']

  it('are both booked, and the second is named, for it may be the same delivery written twice', () => {
    const found = read([row, row, ['10/03/2026', product.name, '3', '', '']])
    expect(found.deliveries).toHaveLength(3)
    expect(found.alike).toEqual([3])
    expect(read([goodRow, goodRow]).alike).toEqual([])
  })
})

describe('a column of a delivery list', () => {
  it('holds one thing: chosen for the containers, it is not also their size', () => {
    const guessed = { date: 0, product: 1, containers: null, size: 2, reference: null }
    expect(withColumn(guessed, 'containers', 2)).toEqual({ ...guessed, containers: 2, size: null })
    expect(withColumn(guessed, 'size', null)).toEqual({ ...guessed, size: null })
  })

  it('called Gebinde counts containers, and Größe L or Gebindegröße says their size', () => {
    expect(guessColumns(['Datum', 'Produkt', 'Gebinde', 'Größe L'], [])).toMatchObject({
      containers: 2,
      size: 3,
    })
    expect(guessColumns(['Datum', 'Produkt', 'Anzahl', 'Gebindegröße'], [])).toMatchObject({
      containers: 2,
      size: 3,
    })
  })
})
