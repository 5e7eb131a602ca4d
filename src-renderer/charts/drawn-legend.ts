import type { Chart, ChartType, LegendItem, LegendOptions, PointStyle } from 'chart.js'
import type { Palette } from './palette'

/** The parts of a dataset that say how it is drawn. */
interface Look {
  readonly label?: string
  readonly borderColor?: unknown
  readonly backgroundColor?: unknown
  readonly borderDash?: number[]
  readonly pointStyle?: unknown
  readonly pointBackgroundColor?: unknown
}

const colour = (value: unknown, otherwise: string): string => (typeof value === 'string' ? value : otherwise)

/**
 * A legend that shows each series as it is drawn: the shape of its points, its dash. `order` names the series to be
 * shown, in order; others have no entry. It only tells; nothing is switched by it.
 */
export const drawnLegend = <T extends ChartType>(
  palette: Palette,
  order: readonly string[],
): LegendOptions<T> =>
  ({
    display: true,
    align: 'start',
    onClick: () => {},
    labels: {
      color: palette.ink,
      usePointStyle: true,
      // a round point stays round: its width is the root of two times its box
      pointStyleWidth: 17,
      boxHeight: 12,
      padding: 14,
      font: { family: "'Inter Variable', system-ui, sans-serif", size: 14 },
      generateLabels: (chart: Chart) =>
        order.flatMap((name): LegendItem[] => {
          const index = chart.data.datasets.findIndex((dataset) => dataset.label === name)
          const look = chart.data.datasets[index] as Look | undefined
          return look === undefined ? [] : [item(name, index, look, palette)]
        }),
    },
  }) as unknown as LegendOptions<T>

function item(text: string, datasetIndex: number, look: Look, palette: Palette): LegendItem {
  const style = look.pointStyle
  const stroke = colour(look.borderColor, palette.ink)
  return {
    text,
    datasetIndex,
    fontColor: palette.ink,
    strokeStyle: stroke,
    fillStyle: colour(look.pointBackgroundColor, colour(look.backgroundColor, stroke)),
    lineWidth: 2,
    lineDash: style === 'line' && (look.borderDash ?? []).length > 0 ? [4, 3] : [],
    pointStyle: (typeof style === 'string' ? style : 'circle') as PointStyle,
  }
}
