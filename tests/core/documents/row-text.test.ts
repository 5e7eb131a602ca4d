import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { decode } from '#core/documents/decode'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import { packRow, unpackRow } from '#core/documents/row-text'
import { monthTotals, portfolioTotals, productTotals } from '#core/spend/portfolio-totals'
import { siteRow } from '#core/worksheet/site-row'
import { good } from '../../support/outcomes'

const folder = new URL('../../../assets/demo/', import.meta.url)
const rows = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => {
    const { document } = good(decode('site', readFileSync(new URL(name, folder), 'utf8')))
    const library = { ...document, settings: DEFAULT_SETTINGS }
    return siteRow(document.site, library, '2026-05-04', (instant) => instant.slice(0, 10))
  })

describe('a portfolio row as text', () => {
  it.each(rows.map((row) => [row.name, row] as const))(
    'of %s comes back equal, digit for digit',
    (_name, row) => {
      const back = unpackRow(packRow(row))
      expect({ ...back, months: back.months }).toEqual(row)
      expect(packRow(back)).toBe(packRow(row))
    },
  )

  it('has figures of every kind in it, so that the above says something', () => {
    expect(rows.some((row) => row.products.some((product) => product.reorder?.cost.ok === true))).toBe(true)
    expect(rows.some((row) => row.saved !== null)).toBe(true)
    expect(rows.some((row) => row.months.some((month) => !month.cost.isZero()))).toBe(true)
    expect(rows.some((row) => row.attention.length > 0)).toBe(true)
  })

  it('adds up to the same totals', () => {
    const back = rows.map((row) => unpackRow(packRow(row)))
    expect(portfolioTotals(back)).toEqual(portfolioTotals(rows))
    expect(productTotals(back)).toEqual(productTotals(rows))
    expect(monthTotals(back, 'EUR')).toEqual(monthTotals(rows, 'EUR'))
  })

  it('is one line, which the file of rows relies on', () => {
    for (const row of rows) expect(packRow({ ...row, name: 'two\nlines\tand a tab' })).not.toMatch(/[\n\t]/u)
  })
})
