import type { ChartConfiguration } from 'chart.js'
import type { PortfolioMonth } from '#core/spend/portfolio'
import { commonOptions } from '../../charts/common'
import { fillOf } from '../../charts/marks'
import type { Palette } from '../../charts/palette'
import { monthWords } from '../spend/month-chart'

/** Months as columns; what is to come, and what is not whole, drawn faint. */
export const totalsChart = (
  months: readonly PortfolioMonth[],
  current: string,
  palette: Palette,
  options: { readonly unit: string; readonly tick: (value: number) => string },
): ChartConfiguration =>
  ({
    type: 'bar',
    data: {
      labels: months.map((month) => monthWords(month.month)),
      datasets: [
        {
          label: options.unit,
          data: months.map((month) => month.cost.toNumber()),
          backgroundColor: months.map((month) =>
            fillOf(month.unknownLines > 0 ? 1 : 0, palette.accent, palette.surface, month.month >= current),
          ),
          borderColor: palette.accent,
          borderWidth: 1,
        },
      ],
    },
    options: commonOptions<'bar'>(palette, { yTitle: options.unit, tick: options.tick, legend: false }),
  }) as ChartConfiguration
