import type { ChartConfiguration } from 'chart.js'
import type { CostChange } from '#core/spend/changes-since'
import { commonOptions } from '../../charts/common'
import { fillOf } from '../../charts/marks'
import type { Palette } from '../../charts/palette'
import { CAUSES } from './spend-words'
import { withEveryName } from './every-name'

export interface Step {
  readonly label: string
  /** from and to, money a month */
  readonly from: number
  readonly to: number
  readonly kind: 'total' | 'more' | 'less'
}

/** The way from the month then to the month now; causes that changed nothing are left out. */
export function stepsOf(change: CostChange, then: string): readonly Step[] {
  const steps: Step[] = [{ label: then, from: 0, to: change.before.toNumber(), kind: 'total' }]
  let level = change.before
  for (const step of change.steps) {
    if (step.change.isZero()) continue
    const next = level.plus(step.change)
    steps.push({
      label: CAUSES[step.cause],
      from: level.toNumber(),
      to: next.toNumber(),
      kind: step.change.gt(0) ? 'more' : 'less',
    })
    level = next
  }
  return [...steps, { label: 'Now', from: 0, to: change.now.toNumber(), kind: 'total' }]
}

/**
 * A staircase: full columns for then and now, hanging ones for what was added or taken away between; lying, each is a
 * line with its name before it. No step goes without its name.
 */
export function changesChart(
  steps: readonly Step[],
  palette: Palette,
  options: {
    readonly unit: string
    readonly lying: boolean
    readonly tick: (value: number) => string
    readonly amount: (value: number) => string
  },
): ChartConfiguration {
  const looks = {
    total: { index: 0, colour: palette.accent },
    more: { index: 1, colour: palette.bad },
    less: { index: 2, colour: palette.good },
  }
  const common = commonOptions<'bar'>(palette, { yTitle: options.unit, tick: options.tick, legend: false })
  const tip = common.plugins?.tooltip
  if (tip !== undefined)
    tip.callbacks = {
      label: (item) => {
        const step = steps[item.dataIndex]
        if (step === undefined) return ''
        return ` ${figure(step, options.amount)}`
      },
    }
  return {
    type: 'bar',
    data: {
      labels: steps.map((step) => [step.label, figure(step, options.amount)]),
      datasets: [
        {
          label: 'A month',
          data: steps.map((step) => [step.from, step.to] as [number, number]),
          backgroundColor: steps.map((step) =>
            fillOf(looks[step.kind].index, looks[step.kind].colour, palette.surface),
          ),
          borderColor: steps.map((step) => looks[step.kind].colour),
          borderWidth: 1,
          borderSkipped: false,
          minBarLength: 3,
        },
      ],
    },
    options: withEveryName(common, options.lying),
  } as ChartConfiguration
}

const figure = (step: Step, amount: (value: number) => string): string =>
  step.kind === 'total'
    ? amount(step.to)
    : `${step.kind === 'more' ? '+' : '−'}${amount(Math.abs(step.to - step.from))}`
