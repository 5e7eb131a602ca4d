import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Day, Entry, NumberText, Product, Pump, RinseWater, Scenario, Site } from '../records'
import { scale } from '../statistics/propagate'
import { Decimal } from '../units/decimal'
import type { UnitName } from '../units/dimensions'
import { PLAIN_DECIMAL, readNumber } from '../units/read'
import { places, reprice } from './reprice'
import type { PumpSetting } from './types'

export interface ChangedWorld {
  /** racks then over racks today */
  readonly racksFactor: number
  readonly site: Site
  readonly products: readonly Product[]
  readonly settings: readonly PumpSetting[]
}

type Change = Scenario['changes'][number]

/**
 * The records as a scenario has them. Percentages are of today: 100 is as today. More or less fresh water per rack, and
 * a stronger or weaker product, move the dose so that the same strength is kept; a window in mL/rack does not follow
 * the water.
 */
export function whatIf(
  site: Site,
  products: readonly Product[],
  settings: readonly PumpSetting[],
  asOf: Day,
  scenario: Scenario,
): Outcome<ChangedWorld> {
  const racks = percent(scenario.racksPercent, 'scenario.racksPercent')
  const water = percent(scenario.rinseVolumePercent, 'scenario.rinseVolumePercent')
  return chain(all([racks, water]), ([racksFactor, waterFactor]) => {
    const pumps = site.machines.flatMap((machine) => machine.pumps)
    const changed = all(
      pumps.map((pump) => {
        const change = scenario.changes.find((item) => item.pumpId === pump.id) ?? null
        return changePump(pump, change, products, waterFactor, asOf, site.currency)
      }),
    )
    return chain(changed, (parts) => ok(world(site, settings, parts, racksFactor, waterFactor)))
  })
}

interface ChangedPump {
  readonly pump: Pump
  readonly product: Product | null
  /** dose asked for over today's: what the screw, or the tank's target, is to do */
  readonly dose: number
  /** what the dose per rack follows besides: the water */
  readonly follows: number
}

function changePump(
  pump: Pump,
  change: Change | null,
  products: readonly Product[],
  water: number,
  asOf: Day,
  currency: string,
): Outcome<ChangedPump> {
  const now = products.find((product) => product.id === pump.productId) ?? null
  const wanted = change?.productId ?? null
  const base = wanted === null ? now : (products.find((product) => product.id === wanted) ?? null)
  if (wanted !== null && base === null) return fail({ code: 'not-found', what: 'product' })
  const follows = pump.window?.basis === 'mL-per-rack' ? 1 : water
  if (change === null) return ok({ pump, product: base, dose: 1, follows })
  const dose = percent(change.dosePercent, 'scenario.dosePercent')
  const strength = strengthFactor(now, change.strengthPercent)
  const priced = base === null ? ok(null) : reprice(base, change, asOf, currency)
  return chain(all([dose, strength, priced]), ([more, weaker, product]) =>
    ok({
      pump: product === null ? pump : { ...pump, productId: product.id },
      product,
      dose: more * weaker,
      follows,
    }),
  )
}

/** Today's strength over the new one: half the strength takes twice the dose. */
function strengthFactor(product: Product | null, text: NumberText | null): Outcome<number> {
  if (text === null) return ok(1)
  const now = product?.strength ?? { kind: 'none' }
  if (now.kind === 'none') return fail({ code: 'missing', field: 'product.strength', needed: 'strength' })
  return chain(
    all([
      readNumber(now.percent, 'product.strength', { above: 0, high: 100 }),
      readNumber(text, 'scenario.strengthPercent', { above: 0, high: 100 }),
    ]),
    ([today, then]) => ok(today / then),
  )
}

const percent = (text: NumberText | null, field: string): Outcome<number> =>
  text === null ? ok(1) : chain(readNumber(text, field, { low: 0, high: 1000 }), (value) => ok(value / 100))

function world(
  site: Site,
  settings: readonly PumpSetting[],
  parts: readonly ChangedPump[],
  racksFactor: number,
  water: number,
): ChangedWorld {
  const byPump = new Map(parts.map((part) => [part.pump.id, part]))
  return {
    racksFactor,
    products: parts.flatMap(({ product }) => (product === null ? [] : [product])),
    settings: settings.map((setting) => {
      const part = byPump.get(setting.pumpId)
      return part === undefined ? setting : scaleSetting(setting, part)
    }),
    site: {
      ...site,
      machines: site.machines.map((machine) => ({
        ...machine,
        rinse: machine.rinse === null || water === 1 ? machine.rinse : moreWater(machine.rinse, water),
        pumps: machine.pumps.map((pump) => {
          const part = byPump.get(pump.id)
          return part === undefined ? pump : scaleTarget(part)
        }),
      })),
    },
  }
}

const scaleSetting = (setting: PumpSetting, { dose, follows }: ChangedPump): PumpSetting => ({
  ...setting,
  dose: setting.dose === null ? null : chain(setting.dose, (was) => scale(was, dose * follows, 'mL/rack')),
  flow: setting.flow === null ? null : chain(setting.flow, (was) => scale(was, dose, 'mL/min')),
})

/** A tank's target, which probes hold and fresh fills are charged to, moves with the dose asked for. */
function scaleTarget({ pump, dose }: ChangedPump): Pump {
  if (pump.window === null || dose === 1 || !PLAIN_DECIMAL.test(pump.window.target)) return pump
  return { ...pump, window: { ...pump.window, target: places(new Decimal(pump.window.target).times(dose)) } }
}

const times = <U extends UnitName>(entry: Entry<U>, factor: number): Entry<U> =>
  PLAIN_DECIMAL.test(entry.value)
    ? { ...entry, value: places(new Decimal(entry.value).times(factor)) }
    : entry

const moreWater = (rinse: RinseWater, factor: number): RinseWater =>
  rinse.kind === 'flow-and-seconds'
    ? { ...rinse, flow: times(rinse.flow, factor) }
    : { ...rinse, perRack: times(rinse.perRack, factor) }
