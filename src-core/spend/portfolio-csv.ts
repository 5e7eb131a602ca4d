import { Decimal } from '../units/decimal'
import { minorDigits } from '../units/money'
import type { AttentionReason } from './attention'
import { figure, text, toCsv, type CsvCell, type CsvStyle } from './csv'
import type { PortfolioRow } from './portfolio'
import { litresOf } from './portfolio-order'
import type { ShoppingGroup } from './shopping-list'

const money = (amount: Decimal | null, currency: string): CsvCell =>
  amount === null ? null : figure(amount.toFixed(minorDigits(currency)))

/** A double to a number of decimal places, trailing zeros kept: a column of one kind. */
const places = (value: number | null, digits: number): CsvCell =>
  value === null || !Number.isFinite(value) ? null : figure(new Decimal(value).toFixed(digits))

/** One row per site. A site some of whose costs are not known says how many; what is not known at all is left empty. */
export const sitesCsv = (
  rows: readonly PortfolioRow[],
  style: CsvStyle,
  words: (reason: AttentionReason, row: PortfolioRow) => string,
): string =>
  toCsv(
    [
      'Site',
      'Currency',
      'Cost a month',
      'Costs not known',
      'Cost per 100 racks',
      'Racks a month',
      'Litres a month',
      'Saved in a year',
      'Needs attention',
    ],
    rows.map((row) => [
      text(row.name),
      text(row.currency),
      row.unknownLines > 0 && row.cost.isZero() ? null : money(row.cost, row.currency),
      figure(String(row.unknownLines)),
      row.costPerRack === null
        ? null
        : figure(row.costPerRack.times(100).toFixed(minorDigits(row.currency) + 1)),
      places(row.racks, 0),
      places(litresOf(row), 3),
      places(row.saved?.value ?? null, minorDigits(row.currency)),
      text(row.attention.map((reason) => words(reason, row)).join('; ')),
    ]),
    style,
  )

/** One row per site and product. */
export const productsCsv = (rows: readonly PortfolioRow[], style: CsvStyle): string =>
  toCsv(
    [
      'Site',
      'Product',
      'Currency',
      'Litres a month',
      'Containers a month',
      'Cost a month',
      'Lasts days',
      'Order by',
    ],
    rows.flatMap((row) =>
      row.products.map((product) => [
        text(row.name),
        text(product.name),
        text(row.currency),
        places(product.litres, 3),
        places(product.containers, 3),
        money(product.cost, row.currency),
        product.reorder === null ? null : places(Math.floor(product.reorder.daysOfCover), 0),
        product.reorder === null ? null : text(product.reorder.orderOn),
      ]),
    ),
    style,
  )

/** One row per site and calendar month; a month with costs not known has none. */
export const monthsCsv = (rows: readonly PortfolioRow[], style: CsvStyle): string =>
  toCsv(
    ['Site', 'Month', 'Currency', 'Cost'],
    rows.flatMap((row) =>
      row.months.map((month) => [
        text(row.name),
        text(month.month),
        text(row.currency),
        month.unknownLines === 0 ? money(month.cost, row.currency) : null,
      ]),
    ),
    style,
  )

/** One row per order, most urgent first within its product. */
export const shoppingCsv = (groups: readonly ShoppingGroup[], style: CsvStyle): string =>
  toCsv(
    ['Product', 'Container, L', 'Site', 'Containers', 'Order by', 'Currency', 'Cost'],
    groups.flatMap((group) =>
      group.lines.map((line) => [
        text(group.product),
        places(group.containerLitres, 3),
        text(line.siteName),
        figure(String(line.reorder.containers)),
        text(line.reorder.orderOn),
        text(group.currency),
        line.reorder.cost.ok ? money(line.reorder.cost.value, group.currency) : null,
      ]),
    ),
    style,
  )
