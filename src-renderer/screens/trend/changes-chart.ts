import type { ChartConfiguration } from 'chart.js'
import type { ChangeChart } from '#core/drift/types'
import { commonOptions } from '../../charts/common'
import { drawnLegend } from '../../charts/drawn-legend'
import type { Palette } from '../../charts/palette'

/** Individuals chart: the change of each interval, its mean, and the limits beyond which it is more than chance. */
export function changesChart(
  chart: ChangeChart,
  palette: Palette,
  words: { readonly day: (day: string) => string; readonly percent: (value: number) => string },
): ChartConfiguration<'line'> {
  const { values, mean, lower, upper } = chart
  const level = (label: string, value: number, dash: number[]) => ({
    label,
    data: values.map(() => value),
    borderColor: palette.inkSoft,
    borderWidth: 1.5,
    borderDash: dash,
    pointRadius: 0,
    pointStyle: 'line' as const,
  })
  const options = commonOptions<'line'>(palette, {
    yTitle: 'change, %',
    tick: words.percent,
    tip: (value) => `${words.percent(value)} %`,
  })
  return {
    type: 'line',
    data: {
      labels: values.map((value) => words.day(value.day)),
      datasets: [
        {
          label: 'Left to found',
          data: values.map((value) => value.percent),
          borderColor: palette.accent,
          backgroundColor: palette.accent,
          borderWidth: 2,
          pointStyle: values.map((value) => (value.outside ? 'triangle' : 'circle')),
          pointRadius: values.map((value) => (value.outside ? 9 : 5)),
          pointBackgroundColor: values.map((value) => (value.outside ? palette.bad : palette.accent)),
          pointBorderColor: values.map((value) => (value.outside ? palette.bad : palette.accent)),
        },
        level('Mean', mean, []),
        level('Limits of chance', upper, [6, 4]),
        level('', lower, [6, 4]),
      ],
    },
    options: {
      ...options,
      scales: {
        ...options.scales,
        y: { ...(options.scales?.['y'] as object), beginAtZero: false, grace: '8%' },
      },
      plugins: {
        ...options.plugins,
        legend: drawnLegend<'line'>(palette, ['Left to found', 'Mean', 'Limits of chance']),
      },
    },
  }
}
