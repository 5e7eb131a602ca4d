import type { ChartConfiguration } from 'chart.js'
import type { MonthRow } from '#core/spend/months-of'
import { commonOptions } from '../../charts/common'
import { fillOf } from '../../charts/marks'
import type { Palette } from '../../charts/palette'
import { MONTHS } from '../../state/days-words'

/** drawn with its upper edge, and not named twice */
const LOW = 'at least'

export type Measure = 'cost' | 'litres'

/** `Mar 26`. */
export const monthWords = (month: string): string =>
  `${MONTHS[Number(month.slice(5, 7)) - 1] ?? month} ${month.slice(2, 4)}`

export const figureOf = (row: MonthRow, productId: string, measure: Measure): number | null => {
  const line = row.lines.find((one) => one.productId === productId)
  if (line === undefined) return null
  if (measure === 'cost') return line.cost.ok ? line.cost.value.toNumber() : null
  return line.litres.ok ? line.litres.value.value : null
}

/** Months as stacked columns by product, what is to come drawn faint, with the doubt about the whole as a bracket. */
export function monthChart(
  rows: readonly MonthRow[],
  products: readonly { readonly productId: string; readonly name: string }[],
  measure: Measure,
  palette: Palette,
  options: { readonly unit: string; readonly tick: (value: number) => string },
): ChartConfiguration {
  const bars = products.map((product, index) => ({
    type: 'bar' as const,
    label: product.name,
    data: rows.map((row) => figureOf(row, product.productId, measure)),
    backgroundColor: rows.map((row) =>
      fillOf(index, colourOf(palette, index), palette.surface, row.kind !== 'past'),
    ),
    borderColor: colourOf(palette, index),
    borderWidth: 1,
    stack: 'month',
    order: 2,
  }))
  const bounds = measure === 'cost' ? boundsOf(rows) : []
  const band = bounds.map(({ label, data }) => ({
    type: 'line' as const,
    label,
    data,
    borderColor: palette.ink,
    borderWidth: 1.5,
    borderDash: [4, 3],
    pointRadius: 0,
    stack: label,
    order: 1,
    spanGaps: false,
  }))
  const common = commonOptions<'bar'>(palette, {
    yTitle: options.unit,
    tick: options.tick,
    stacked: true,
  })
  const legend = common.plugins?.legend
  if (legend?.labels !== undefined) {
    legend.labels.filter = (item) => item.text !== LOW
    legend.labels.sort = (a, b) => (a.datasetIndex ?? 0) - (b.datasetIndex ?? 0)
  }
  return {
    type: 'bar',
    data: { labels: rows.map((row) => monthWords(row.month)), datasets: [...bars, ...band] },
    options: common,
  } as ChartConfiguration
}

const colourOf = (palette: Palette, index: number): string =>
  palette.series[index % palette.series.length] ?? palette.accent

const at = (row: MonthRow, side: 'low' | 'high'): number | null =>
  row.kind !== 'past' && row.costEstimate.ok && row.unknownLines === 0 ? row.costEstimate.value[side] : null

/** The 95 % band of the months to come. */
function boundsOf(
  rows: readonly MonthRow[],
): readonly { readonly label: string; readonly data: (number | null)[] }[] {
  return [
    { label: LOW, data: rows.map((row) => at(row, 'low')) },
    { label: '95 % band, to come', data: rows.map((row) => at(row, 'high')) },
  ]
}
