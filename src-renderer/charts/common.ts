import type { ChartOptions } from 'chart.js'
import type { Palette } from './palette'

const FONT = "'Inter Variable', system-ui, sans-serif"

/** Axes, legend and tips in the hand of the rest of the sheet. `tick` writes the figures of the y axis. */
export const commonOptions = <T extends 'bar' | 'line'>(
  palette: Palette,
  options: {
    readonly yTitle: string
    readonly tick: (value: number) => string
    readonly stacked?: boolean
    readonly legend?: boolean
    /** writes one figure in full where the pointer rests; as the axis does when left out */
    readonly tip?: (value: number) => string
  },
): ChartOptions<T> => {
  const ticks = { color: palette.inkSoft, font: { family: FONT, size: 13 } }
  const common: ChartOptions<'bar' | 'line'> = {
    interaction: { mode: 'index', intersect: false },
    scales: {
      x: {
        stacked: options.stacked ?? false,
        ticks: { ...ticks, maxRotation: 0, autoSkipPadding: 12 },
        grid: { display: false },
        border: { color: palette.lineStrong },
      },
      y: {
        stacked: options.stacked ?? false,
        beginAtZero: true,
        title: { display: options.yTitle !== '', text: options.yTitle, ...ticks },
        ticks: { ...ticks, maxTicksLimit: 6, callback: (value) => options.tick(Number(value)) },
        grid: { color: palette.line },
        border: { display: false },
      },
    },
    plugins: {
      legend: {
        display: options.legend ?? true,
        align: 'start',
        labels: { color: palette.ink, font: { family: FONT, size: 14 }, boxWidth: 22, boxHeight: 14 },
      },
      tooltip: {
        backgroundColor: palette.ink,
        titleColor: palette.surface,
        bodyColor: palette.surface,
        titleFont: { family: FONT, size: 14 },
        bodyFont: { family: FONT, size: 14 },
        padding: 10,
        cornerRadius: 4,
        callbacks: {
          label: (item) => {
            const value = typeof item.raw === 'number' ? item.raw : item.parsed.y
            const text = value === null ? '' : (options.tip ?? options.tick)(value)
            return ` ${item.dataset.label ?? ''}: ${text}`
          },
        },
      },
    },
  }
  return common as ChartOptions<T>
}
