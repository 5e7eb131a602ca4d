import type { ChartConfiguration, ScatterDataPoint } from 'chart.js'
import type { BoosterChange } from '#core/tank/booster-of-pump'
import { commonOptions } from '../../charts/common'
import type { Palette } from '../../charts/palette'

type Line = ChartConfiguration<'line', ScatterDataPoint[]>

/** What leaves the booster rack by rack after a change, on its way from the old strength to the new one. */
export function boosterChart(
  change: BoosterChange,
  palette: Palette,
  number: (value: number) => string,
): Line {
  const options = commonOptions<'line'>(palette, {
    yTitle: 'ppm by volume',
    tick: number,
    tip: (value) => `${number(value)} ppm`,
  })
  const racks = change.strengths.at(-1)?.rack ?? 1
  return {
    type: 'line',
    data: {
      datasets: [
        {
          label: 'Leaves the booster',
          data: change.strengths.map(({ rack, strength }) => ({ x: rack, y: strength })),
          borderColor: palette.accent,
          backgroundColor: palette.accent,
          borderWidth: 3,
          pointRadius: 4,
        },
        {
          label: 'Dosed now',
          data: [
            { x: 0, y: change.after },
            { x: racks, y: change.after },
          ],
          borderColor: palette.good,
          borderWidth: 2,
          borderDash: [5, 4],
          pointRadius: 0,
        },
      ],
    },
    options: {
      ...options,
      parsing: false,
      scales: {
        ...options.scales,
        y: { ...(options.scales?.['y'] as object), beginAtZero: false },
        x: {
          ...(options.scales?.['x'] as object),
          type: 'linear',
          min: 0,
          max: racks,
          title: { ...options.scales?.['y']?.title, text: 'racks since the change' },
        },
      },
    },
  }
}
