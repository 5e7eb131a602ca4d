import type { ChartConfiguration, ScatterDataPoint } from 'chart.js'
import type { StrengthSeries } from '#core/tank/service-summary'
import { commonOptions } from '../../charts/common'
import type { Palette } from '../../charts/palette'

type Line = ChartConfiguration<'line', ScatterDataPoint[]>
type Dataset = Line['data']['datasets'][number]

/**
 * The strength rack by rack against its window. Fills are jumps; the lighter lines are the ends of the flow's doubt.
 * `number` writes a figure.
 */
export function strengthChart(
  series: StrengthSeries,
  window: { readonly low: number; readonly target: number; readonly high: number } | null,
  palette: Palette,
  number: (value: number) => string,
): Line {
  const options = commonOptions<'line'>(palette, {
    yTitle: 'g/L product',
    tick: number,
    tip: (value) => `${number(value)} g/L`,
  })
  const doubtful = series.points.some((point) => point.high > point.low)
  return {
    type: 'line',
    data: {
      datasets: [
        ...(window === null ? [] : windowLines(window, series.racks, palette)),
        {
          label: 'Strength after the rack',
          data: series.points.map((point) => ({ x: point.rack, y: point.strength })),
          borderColor: palette.accent,
          backgroundColor: palette.accent,
          borderWidth: 3,
          pointRadius: series.points.map((point) => (point.fill ? 5 : 0)),
          pointStyle: 'rectRot',
        },
        ...(doubtful ? doubtLines(series, palette) : []),
      ],
    },
    options: {
      ...options,
      parsing: false,
      interaction: { mode: 'nearest', axis: 'x', intersect: false },
      scales: {
        ...options.scales,
        x: {
          ...(options.scales?.['x'] as object),
          type: 'linear',
          min: 0,
          max: series.racks,
          title: { display: true, text: 'racks since the start of service', color: palette.inkSoft },
        },
      },
    },
  }
}

const level = (value: number, racks: number): ScatterDataPoint[] => [
  { x: 0, y: value },
  { x: racks, y: value },
]

function windowLines(
  window: { readonly low: number; readonly target: number; readonly high: number },
  racks: number,
  palette: Palette,
): readonly Dataset[] {
  const plain = { borderColor: palette.good, pointRadius: 0 } as const
  return [
    { ...plain, label: 'Window', data: level(window.low, racks), borderWidth: 2.5 },
    { ...plain, label: 'Window, upper end', data: level(window.high, racks), borderWidth: 2.5 },
    { ...plain, label: 'Target', data: level(window.target, racks), borderWidth: 1.5, borderDash: [5, 4] },
  ]
}

const doubtLines = (series: StrengthSeries, palette: Palette): readonly Dataset[] =>
  (['low', 'high'] as const).map((end) => ({
    label: end === 'low' ? 'With the flow’s doubt' : 'With the flow’s doubt, upper end',
    data: series.points.map((point) => ({ x: point.rack, y: point[end] })),
    borderColor: palette.lineStrong,
    borderWidth: 1,
    borderDash: [2, 3],
    pointRadius: 0,
  }))
