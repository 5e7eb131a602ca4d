import type { ChartConfiguration, ScatterDataPoint } from 'chart.js'
import type { TrendSeries } from '#core/worksheet/trend-series'
import { commonOptions } from '../../charts/common'
import { dayMarks, type DayMark } from '../../charts/day-marks'
import { drawnLegend } from '../../charts/drawn-legend'
import type { Palette } from '../../charts/palette'
import { tickDays, type DayRange } from './zoom'

type Line = ChartConfiguration<'line', ScatterDataPoint[]>
type Dataset = Line['data']['datasets'][number]

export interface TrendPicture {
  readonly series: TrendSeries
  readonly range: DayRange
  readonly marks: readonly DayMark[]
  readonly unit: string
  readonly number: (value: number) => string
  readonly day: (dayNumber: number) => string
}

/** Lines that only close a shape or repeat one: no entry in the legend, no tip. */
const UNNAMED = ''
const ORDER = ['As found', 'As left', 'Window', 'If it goes on so'] as const

/**
 * One pump over the days: the window as a band, as-found as open circles, as-left as filled diamonds, both with their
 * intervals, a line where only time lay between, and the way it goes on with its interval.
 */
export function trendChart(picture: TrendPicture, palette: Palette): Line {
  const { series, range, number, unit } = picture
  const options = commonOptions<'line'>(palette, { yTitle: unit, tick: number })
  const whiskers = series.points.map(({ day, low, high }) => ({ day, low, high }))
  return {
    type: 'line',
    data: {
      datasets: [
        ...band(series, range, palette),
        ...forecastLines(series, palette),
        found(series, palette),
        left(series, palette),
        between(series, palette),
      ],
    },
    options: {
      ...options,
      parsing: false,
      interaction: { mode: 'nearest', intersect: false },
      plugins: {
        ...options.plugins,
        legend: drawnLegend<'line'>(palette, ORDER),
        tooltip: tips(picture, options),
      },
      scales: {
        y: {
          ...(options.scales?.['y'] as object),
          beginAtZero: false,
          ...reach(picture),
          ticks: { ...(options.scales?.['y']?.ticks as object), includeBounds: false },
        },
        x: {
          ...(options.scales?.['x'] as object),
          type: 'linear',
          min: range.from,
          max: range.to,
          ticks: {
            ...(options.scales?.['x']?.ticks as object),
            callback: (value) => picture.day(Math.round(Number(value))),
          },
          afterBuildTicks: (axis) => {
            axis.ticks = tickDays(range).map((value) => ({ value }))
          },
        },
      },
    },
    plugins: [dayMarks(picture.marks, whiskers, palette)],
  }
}

const xy = (x: number, y: number): ScatterDataPoint => ({ x, y })
/** Ends a line; it keeps its day, because points must stand in order. */
const gapAt = (day: number): ScatterDataPoint => xy(day, Number.NaN)
const plainLine = { pointRadius: 0, pointHitRadius: 0, borderWidth: 1.5 } as const

/** A tokens colour, `#rrggbb`, at an eighth of its strength. */
const faint = (colour: string): string => `${colour}20`

/** The window as it stood, drawn on to both ends of what is shown. */
function band(series: TrendSeries, range: DayRange, palette: Palette): readonly Dataset[] {
  const [first] = series.band
  const last = series.band.at(-1)
  if (first === undefined || last === undefined) return []
  const steps = [{ ...first, day: Math.min(range.from, first.day) }, ...series.band]
  const ends = [...steps, { ...last, day: Math.max(range.to, last.day) }]
  const line = (of: 'low' | 'target' | 'high'): ScatterDataPoint[] =>
    ends.map((step) => xy(step.day, step[of]))
  const edge = { ...plainLine, stepped: 'before' as const, borderColor: palette.good, borderWidth: 1 }
  return [
    { ...edge, label: UNNAMED, data: line('low'), order: 9 },
    {
      ...edge,
      label: 'Window',
      data: line('high'),
      fill: '-1',
      backgroundColor: faint(palette.good),
      pointStyle: 'rect',
      order: 9,
    },
    { ...edge, label: UNNAMED, data: line('target'), borderDash: [2, 4], order: 9 },
  ]
}

function forecastLines(series: TrendSeries, palette: Palette): readonly Dataset[] {
  if (series.forecast.length === 0) return []
  const line = (of: 'low' | 'value' | 'high'): ScatterDataPoint[] =>
    series.forecast.map((point) => xy(point.day, point[of]))
  const end = { ...plainLine, borderColor: palette.inkSoft, borderWidth: 1, borderDash: [2, 3], order: 8 }
  return [
    { ...end, label: UNNAMED, data: line('low') },
    {
      ...end,
      label: UNNAMED,
      data: line('high'),
      fill: '-1',
      backgroundColor: faint(palette.inkSoft),
    },
    {
      ...plainLine,
      label: 'If it goes on so',
      data: line('value'),
      borderColor: palette.ink,
      borderWidth: 2,
      borderDash: [8, 5],
      pointStyle: 'line',
      order: 7,
    },
  ]
}

const found = (series: TrendSeries, palette: Palette): Dataset => ({
  label: 'As found',
  data: series.points.filter((point) => point.kind === 'found').map((point) => xy(point.day, point.value)),
  showLine: false,
  pointStyle: 'circle',
  pointRadius: 6,
  pointHoverRadius: 7,
  pointBorderWidth: 2.5,
  borderColor: palette.series[1] ?? palette.ink,
  backgroundColor: palette.surface,
  pointBackgroundColor: palette.surface,
  order: 1,
})

const left = (series: TrendSeries, palette: Palette): Dataset => ({
  label: 'As left',
  data: series.points.filter((point) => point.kind === 'left').map((point) => xy(point.day, point.value)),
  showLine: false,
  pointStyle: 'rectRot',
  pointRadius: 7,
  pointHoverRadius: 8,
  borderColor: palette.accent,
  backgroundColor: palette.accent,
  order: 1,
})

/** From what one visit left to what the next one found. */
function between(series: TrendSeries, palette: Palette): Dataset {
  const data = series.points.flatMap((point, i) => {
    const before = series.points[i - 1]
    return before === undefined || before.visitId === point.visitId
      ? [gapAt(point.day)]
      : [xy(before.day, before.value), xy(point.day, point.value), gapAt(point.day)]
  })
  return { ...plainLine, label: UNNAMED, data, borderColor: palette.inkSoft, spanGaps: false, order: 5 }
}

/**
 * Enough of the scale for the window, the tests with their intervals and the middle of the forecast. Its outer lines may
 * run off the picture: a wide doubt would press all that was measured flat.
 */
function reach({ series, range }: TrendPicture): { readonly min: number; readonly max: number } {
  const shown = ({ day }: { readonly day: number }): boolean => day >= range.from && day <= range.to
  const ends = [
    ...series.points.filter(shown).flatMap(({ low, high }) => [low, high]),
    ...series.band.flatMap(({ low, high }) => [low, high]),
    ...series.forecast.filter(shown).map(({ value }) => value),
  ]
  const [low, high] = [Math.min(...ends), Math.max(...ends)]
  const room = ROOM * (high - low)
  return { min: Math.max(0, low - room), max: high + 2 * room }
}

/** Above there is twice as much, for the words of the marks. */
const ROOM = 0.1

function tips(picture: TrendPicture, options: ReturnType<typeof commonOptions<'line'>>) {
  return {
    ...options.plugins?.tooltip,
    filter: ({ dataset }: { readonly dataset: { readonly label?: string | undefined } }) =>
      dataset.label === 'As found' || dataset.label === 'As left' || dataset.label === 'If it goes on so',
    callbacks: {
      title: (items: readonly { readonly parsed: { readonly x: number | null } }[]) =>
        picture.day(Math.round(items[0]?.parsed.x ?? 0)),
      label: (item: {
        readonly dataset: { readonly label?: string | undefined }
        readonly parsed: { readonly y: number | null }
      }) => ` ${item.dataset.label ?? ''}: ${picture.number(item.parsed.y ?? 0)} ${picture.unit}`,
    },
  }
}
