import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Day, Id, Machine, Product, Pump, Site } from '../records'
import { addDays, daysBetween } from '../units/days'
import type { Decimal } from '../units/decimal'
import { countedRacks, counterReadings } from './counter'
import { settingOn, testsOf } from './history'
import type { SiteInTime } from './product-over'
import { pumpUse } from './pump-use'
import { sumOf } from './site-use'
import { averageMonth } from './span'
import type { RackRate } from './types'

export type ChangeCause = 'racks' | 'dose' | 'price' | 'product'

export interface CostChange {
  readonly since: Day
  /** money of an average month then and now, sums of rounded lines */
  readonly before: Decimal
  readonly now: Decimal
  /** these add up from `before` to `now` to the cent */
  readonly steps: readonly { readonly cause: ChangeCause; readonly change: Decimal }[]
}

const CAUSES: readonly ChangeCause[] = ['racks', 'dose', 'price', 'product']
/** A change is told over a month at least, and racks then are counted over this many days. Our judgement. */
const SHORTEST_DAYS = 30
const WINDOW_DAYS = 120

/**
 * Why an average month costs more or less than a year ago (or than at the first test, when that is later): first the
 * racks, then the dose, then the price; a pump whose product was changed puts the last two under `product`. Each cumulative
 * cost is rounded, so the steps add up exactly. Problem: `missing` history when the record is younger than a month.
 */
export function changesSince(
  inTime: SiteInTime,
  products: readonly Product[],
  asOf: Day,
): Outcome<CostChange> {
  const pumps = inTime.site.machines.flatMap((machine) => machine.pumps.map((pump) => ({ machine, pump })))
  const firsts = pumps.map(({ pump }) => testsOf(inTime.doses, pump.id)[0]?.on ?? null)
  const since = firsts.reduce<Day | null>(
    (latest, on) => (latest === null || on === null ? null : on > latest ? on : latest),
    addDays(asOf, -365),
  )
  if (since === null || pumps.length === 0 || daysBetween(since, asOf) < SHORTEST_DAYS)
    return fail({ code: 'missing', field: 'visits', needed: 'history' })
  const steps = all(pumps.map(({ machine, pump }) => pumpSteps(inTime, products, machine, pump, since, asOf)))
  return chain(steps, (perPump) =>
    ok({
      since,
      before: sumOf(perPump.map((pump) => pump.before)),
      now: sumOf(perPump.map((pump) => pump.now)),
      steps: CAUSES.map((cause) => ({
        cause,
        change: sumOf(perPump.flatMap((pump) => (pump[cause] === undefined ? [] : [pump[cause]]))),
      })),
    }),
  )
}

type PumpSteps = { readonly before: Decimal; readonly now: Decimal } & {
  readonly [C in ChangeCause]?: Decimal
}

function pumpSteps(
  inTime: SiteInTime,
  products: readonly Product[],
  machine: Machine,
  pump: Pump,
  since: Day,
  asOf: Day,
): Outcome<PumpSteps> {
  const { site, calendar } = inTime
  const tests = testsOf(inTime.doses, pump.id)
  const racks = ratesThenAndNow(inTime, machine, since)
  const productNow = products.find((product) => product.id === pump.productId) ?? null
  const productThen = productOn(site, products, pump, since) ?? productNow
  const cost = (rate: Outcome<RackRate>, product: Product | null, doseDay: Day, priceDay: Day) =>
    pumpUse({
      pump,
      machine,
      product,
      currency: site.currency,
      day: priceDay,
      span: averageMonth(calendar),
      racks: rate,
      setting: settingOn(tests, doseDay),
    }).costPerMonth
  const before = cost(racks.before, productThen, since, since)
  const moreRacks = cost(racks.now, productThen, since, since)
  const now = cost(racks.now, productNow, asOf, asOf)
  if (productThen?.id !== productNow?.id)
    return chain(all([before, moreRacks, now]), ([a, b, c]) =>
      ok({ before: a, now: c, racks: b.minus(a), product: c.minus(b) }),
    )
  return chain(all([before, moreRacks, cost(racks.now, productNow, asOf, since), now]), ([a, b, c, d]) =>
    ok({ before: a, now: d, racks: b.minus(a), dose: c.minus(b), price: d.minus(c) }),
  )
}

/**
 * Racks then, counted around that day, and now, as the average month has them; where the counter cannot say how it was
 * then, the racks did not change.
 */
function ratesThenAndNow(
  inTime: SiteInTime,
  machine: Machine,
  since: Day,
): { readonly before: Outcome<RackRate>; readonly now: Outcome<RackRate> } {
  const now = inTime.racks.get(machine.id) ?? fail({ code: 'not-found', what: machine.name })
  const then = countedRacks(counterReadings(inTime.site.visits, machine.id), inTime.calendar, {
    from: addDays(since, -WINDOW_DAYS / 2),
    to: addDays(since, WINDOW_DAYS / 2),
  })
  const before = then === null ? now : chain(now, (rate) => ok({ ...rate, perOpenDay: then.perOpenDay }))
  return { before, now }
}

/** The product a pump fed on a day, by the set-up kept with the last visit closed before it. */
function productOn(site: Site, products: readonly Product[], pump: Pump, day: Day): Product | null {
  const visit = site.visits
    .filter((item) => item.startedAt.slice(0, 10) <= day && item.setupId !== null)
    .at(-1)
  const snapshot = site.snapshots.find((item) => item.id === visit?.setupId)
  const then = snapshot?.machines.flatMap((machine) => machine.pumps).find((item) => item.id === pump.id)
  const id: Id | null = then?.productId ?? null
  if (snapshot === undefined || id === null) return null
  return (
    products.find((product) => product.id === id) ??
    snapshot.products.find((product) => product.id === id) ??
    null
  )
}
