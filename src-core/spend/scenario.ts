import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Day, Id, Product, Pump, Scenario, Site } from '../records'
import type { Estimate } from '../statistics/estimate'
import { difference, sum } from '../statistics/propagate'
import type { Decimal } from '../units/decimal'
import { siteUse } from './site-use'
import { whatIf } from './what-if'
import type { PumpSetting, PumpUse, SpendTotals } from './types'

export interface ScenarioLine {
  readonly pumpId: Id
  readonly productId: Id | null
  readonly today: PumpUse
  readonly changed: PumpUse
  /** rounded lines; then - today */
  readonly change: Outcome<Decimal>
}

/** One what-if beside today. Money differences are then - today: negative is saved. */
export interface ScenarioResult {
  readonly scenarioId: Id
  readonly name: string
  readonly lines: readonly ScenarioLine[]
  readonly today: SpendTotals
  readonly changed: SpendTotals
  readonly changePerMonth: Outcome<Decimal>
  readonly changePerYear: Outcome<Decimal>
  /** the same with its interval, money a month, unrounded */
  readonly change: Outcome<Estimate<'money/month'>>
}

/** Whatever is not known about a pump is the same today and then, so it cancels as far as it truly does. */
const ALL_SHARED = [
  'replicates',
  'run-repeatability',
  'reading',
  'roller-pulse',
  'timer',
  'cylinder-tolerance',
  'tube-factor',
  'density',
  'scale',
  'flow',
  'dose-seconds',
  'rinse-volume',
  'strength',
  'racks',
  'charges',
  'priming',
  'price',
  'tank-volume',
] as const

/** Today's average month and that of a scenario, pump by pump, at the prices of the day `asOf`. */
export function scenarioResult(
  site: Site,
  products: readonly Product[],
  settings: readonly PumpSetting[],
  asOf: Day,
  scenario: Scenario,
): ScenarioResult {
  const today = siteUse(site, products, settings, asOf)
  const then = chain(whatIf(site, products, settings, asOf, scenario), (world) =>
    ok(siteUse(world.site, world.products, world.settings, asOf, { racksFactor: world.racksFactor })),
  )
  if (!then.ok) return failed(scenario, today.totals, then)
  const pumps = site.machines.flatMap((machine): readonly Pump[] => machine.pumps)
  const lines = today.use.flatMap((line, index): readonly ScenarioLine[] => {
    const other = then.value.use[index]
    if (other === undefined) return []
    const change = chain(all([line.costPerMonth, other.costPerMonth]), ([a, b]) => ok(b.minus(a)))
    const asked = scenario.changes.find((item) => item.pumpId === line.pumpId)?.productId ?? null
    const productId = asked ?? pumps.find((pump) => pump.id === line.pumpId)?.productId ?? null
    return [{ pumpId: line.pumpId, productId, today: line, changed: other, change }]
  })
  const changes = all(lines.map((line) => changeOf(line)))
  const changePerMonth = chain(all([today.totals.costPerMonth, then.value.totals.costPerMonth]), ([a, b]) =>
    ok(b.minus(a)),
  )
  return {
    scenarioId: scenario.id,
    name: scenario.name,
    lines,
    today: today.totals,
    changed: then.value.totals,
    changePerMonth,
    changePerYear: chain(changePerMonth, (change) => ok(change.times(12))),
    change: chain(changes, (parts) => sum(parts, 'money/month', { shared: ['racks'] })),
  }
}

const changeOf = (line: ScenarioLine): Outcome<Estimate<'money/month'>> =>
  chain(all([line.changed.costEstimate, line.today.costEstimate]), ([then, today]) =>
    difference(then, today, { shared: ALL_SHARED }),
  )

const failed = (scenario: Scenario, today: SpendTotals, problem: Outcome<never>): ScenarioResult => {
  const none = problem.ok ? fail({ code: 'not-found', what: scenario.name }) : problem
  return {
    scenarioId: scenario.id,
    name: scenario.name,
    lines: [],
    today,
    changed: { ...today, costPerMonth: none, costPerRack: none, racksPerMonth: none },
    changePerMonth: none,
    changePerYear: none,
    change: none,
  }
}
