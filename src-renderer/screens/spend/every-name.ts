import type { ChartOptions } from 'chart.js'

/** Columns of which none goes without its name; `lying`, for a narrow page: lines, with their names before them. */
export function withEveryName(common: ChartOptions<'bar'>, lying: boolean): ChartOptions<'bar'> {
  const { x, y } = common.scales ?? {}
  const names = { ...x, ticks: { ...x?.ticks, autoSkip: false } }
  const money = y ?? {}
  return lying
    ? {
        ...common,
        indexAxis: 'y',
        interaction: { mode: 'index', axis: 'y', intersect: false },
        scales: { x: money, y: names },
      }
    : { ...common, scales: { x: names, y: money } }
}
