import type { Id } from '#core/records/index'
import { dayNumberOf } from '#core/units/days'
import { pumpTrend, type PumpTrend } from '#core/worksheet/pump-trend'
import { trendSeries, type TrendScale, type TrendSeries } from '#core/worksheet/trend-series'
import type { SiteSession } from '../../state/site-session.svelte'
import { isWhole, type DayRange } from './zoom'

const SCALES: readonly TrendScale[] = ['flow', 'dose', 'strength']
/** Room at both ends of the days, as a share of them. */
const MARGIN = 0.03

/** Which pump is looked at, on which scale, over which days. */
export class TrendDesk {
  private chosenPump = $state<Id | null>(null)
  private chosenScale = $state<TrendScale>('flow')
  /** null: all of it */
  private chosenRange = $state<DayRange | null>(null)

  constructor(readonly session: SiteSession) {}

  readonly pumps = $derived.by(() =>
    this.session.site.machines.flatMap((machine) =>
      machine.pumps.map((pump) => ({
        value: pump.id,
        label: this.session.site.machines.length > 1 ? `${machine.name}, ${pump.name}` : pump.name,
      })),
    ),
  )

  readonly pump = $derived(this.pumps.find((pump) => pump.value === this.chosenPump) ?? this.pumps[0] ?? null)

  readonly trend: PumpTrend | null = $derived.by(() => {
    if (this.pump === null) return null
    const { site, worksheet, products, instruments } = this.session
    const found = pumpTrend(site, worksheet, { products, instruments }, this.pump.value)
    return found.ok ? found.value : null
  })

  /** Scales on which this pump has figures. */
  readonly scales = $derived.by(() => {
    const { trend } = this
    return trend === null ? [] : SCALES.filter((scale) => trendSeries(trend, scale) !== null)
  })

  readonly scale: TrendScale = $derived(
    this.scales.includes(this.chosenScale) ? this.chosenScale : (this.scales[0] ?? 'flow'),
  )

  readonly series: TrendSeries | null = $derived(
    this.trend === null ? null : trendSeries(this.trend, this.scale),
  )

  /** First test to the end of the forecast, with a little room. */
  readonly whole: DayRange = $derived.by(() => {
    const days = [
      ...(this.series?.points ?? []).map((point) => point.day),
      ...(this.series?.forecast ?? []).map((point) => point.day),
      dayNumberOf(this.session.today),
    ]
    const from = Math.min(...days)
    const to = Math.max(...days)
    const room = Math.max(3, MARGIN * (to - from))
    return { from: from - room, to: to + room }
  })

  readonly range: DayRange = $derived(this.chosenRange ?? this.whole)

  choosePump(pumpId: Id | null): void {
    this.chosenPump = pumpId
    this.chosenRange = null
  }

  chooseScale(scale: TrendScale): void {
    this.chosenScale = scale
  }

  show(range: DayRange): void {
    this.chosenRange = isWhole(range, this.whole) ? null : range
  }
}
