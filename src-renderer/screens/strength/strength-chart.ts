import type { ChartConfiguration, ScatterDataPoint } from 'chart.js'
import type { StrengthSeries } from '#core/tank/service-summary'
import { commonOptions } from '../../charts/common'
import type { Palette } from '../../charts/palette'

type Line = ChartConfiguration<'line', ScatterDataPoint[]>
type Dataset = Line['data']['datasets'][number]

/**
 * The strength rack by rack against its window. Fills are jumps; the lighter lines are the ends of the flow's doubt.
 * `number` writes a figure; `other` is the second of two tanks, dashed.
 */
export function strengthChart(
  series: StrengthSeries,
  window: { readonly low: number; readonly target: number; readonly high: number } | null,
  palette: Palette,
  number: (value: number) => string,
  other: { readonly series: StrengthSeries; readonly name: string; readonly own: string } | null = null,
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
        ...(doubtful ? doubtLines(series, palette) : []),
        {
          label: other === null ? 'Strength after the rack' : other.own,
          data: series.points.map((point) => ({ x: point.rack, y: point.strength })),
          borderColor: palette.accent,
          backgroundColor: palette.accent,
          borderWidth: 3,
          pointRadius: series.points.map((point) => (point.fill ? 5 : 0)),
          pointStyle: 'rectRot',
        },
        ...(other === null
          ? []
          : [
              {
                label: other.name,
                data: other.series.points.map((point) => ({ x: point.rack, y: point.strength })),
                borderColor: palette.ink,
                backgroundColor: palette.ink,
                borderWidth: 2,
                borderDash: [9, 4],
                pointRadius: other.series.points.map((point) => (point.fill ? 4 : 0)),
                pointStyle: 'triangle',
              },
            ]),
      ],
    },
    options: {
      ...options,
      parsing: false,
      interaction: { mode: 'nearest', axis: 'x', intersect: false },
      plugins: {
        ...options.plugins,
        legend: { ...options.plugins?.legend, labels: { ...options.plugins?.legend?.labels, ...NAMED_ONCE } },
      },
      scales: {
        ...options.scales,
        y: {
          ...(options.scales?.['y'] as object),
          beginAtZero: false,
          ...span(series, window, other?.series ?? null),
        },
        x: {
          ...(options.scales?.['x'] as object),
          type: 'linear',
          min: 0,
          max: series.racks,
          title: { ...options.scales?.['y']?.title, text: 'racks since the start of service' },
        },
      },
    },
  }
}

/** The other end of a pair whose first end is named: it needs no entry of its own. */
const UNNAMED = ''

/** Each named series as a piece of its line, dashes and all. */
const NAMED_ONCE = {
  boxWidth: 32,
  boxHeight: 0,
  filter: ({ text }: { readonly text: string }) => text !== UNNAMED,
}

/** The figures on the y axis: window and course with some room, from zero only where the course goes there. */
function span(
  series: StrengthSeries,
  window: { readonly low: number; readonly high: number } | null,
  other: StrengthSeries | null,
) {
  const low = Math.min(series.lowest, window?.low ?? series.lowest, other?.lowest ?? series.lowest)
  const high = Math.max(series.highest, series.settlesAt, window?.high ?? 0, other?.highest ?? 0)
  const room = 0.15 * (high - low || high || 1)
  return { suggestedMin: Math.max(0, low - room), suggestedMax: high + room }
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
    { ...plain, label: UNNAMED, data: level(window.low, racks), borderWidth: 2.5 },
    {
      ...plain,
      label: 'Window',
      data: level(window.high, racks),
      borderWidth: 2.5,
      fill: '-1',
      backgroundColor: `${palette.good}22`,
    },
    { ...plain, label: 'Target', data: level(window.target, racks), borderWidth: 1.5, borderDash: [5, 4] },
  ]
}

const doubtLines = (series: StrengthSeries, palette: Palette): readonly Dataset[] =>
  (['low', 'high'] as const).map((end) => ({
    label: end === 'low' ? UNNAMED : 'With the flow’s doubt',
    data: series.points.map((point) => ({ x: point.rack, y: point[end] })),
    borderColor: palette.lineStrong,
    borderWidth: 1,
    borderDash: [2, 3],
    pointRadius: 0,
  }))
