import { chain, ok, type Outcome } from '../outcome'
import type { Day, Id, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { quotient, scale, sum } from '../statistics/propagate'
import { daysBetween, dayNumberOf } from '../units/days'
import { countedRacks, counterReadings } from './counter'
import { testsOf } from './history'
import { pumpsOf, type SiteInTime } from './product-over'
import type { RackRate } from './types'

/** A test this many days after a count still speaks of the time before it. Our judgement. */
const SAME_VISIT_DAYS = 3
/** A counter speaks for a period when its readings cover this share of it. Our judgement. */
const COVERED = 0.7

/** The rack rates that hold for a period: counted within it where the counter covers it, else the site's own. */
export function racksWithin(
  inTime: SiteInTime,
  product: Product,
  from: Day,
  to: Day,
): { readonly racks: ReadonlyMap<Id, Outcome<RackRate>>; readonly counted: boolean } {
  const racks = new Map(inTime.racks)
  let counted = true
  for (const { machine } of pumpsOf(inTime.site, product.id)) {
    const readings = counterReadings(inTime.site.visits, machine.id)
    const within = countedRacks(readings, inTime.calendar, { from, to })
    const covers = within !== null && daysBetween(within.from, within.to) >= COVERED * daysBetween(from, to)
    const general = racks.get(machine.id)
    if (!covers) {
      counted &&= general !== undefined && general.ok && general.value.from === 'counter'
      continue
    }
    const stated = general !== undefined && general.ok ? general.value.stated : null
    racks.set(
      machine.id,
      ok({
        from: 'counter',
        perOpenDay: within.perOpenDay,
        relativeStandard: within.relativeStandard,
        stated,
        counted: within,
        gap: stated === null || stated === 0 ? null : within.perOpenDay / stated - 1,
      }),
    )
  }
  return { racks, counted }
}

/**
 * How far the doses of a product had moved by the end of a period: as found by the last test in it over as left by the
 * test before, less one; pumps weighted by the racks of their machines. Null when a pump was not tested.
 */
export function driftWithin(
  inTime: SiteInTime,
  product: Product,
  from: Day,
  to: Day,
): { readonly value: number; readonly standard: number } | null {
  const end = dayNumberOf(to) + SAME_VISIT_DAYS
  const found: Estimate<'mL/rack'>[] = []
  const left: Estimate<'mL/rack'>[] = []
  for (const { machine, pump } of pumpsOf(inTime.site, product.id)) {
    const tests = testsOf(inTime.doses, pump.id)
    const index = tests.findLastIndex((test) => test.on > from && dayNumberOf(test.on) <= end)
    const after = tests[index]
    const before = tests[index - 1]
    const rate = inTime.racks.get(machine.id)
    if (after === undefined || before === undefined || rate === undefined || !rate.ok) return null
    const weight = rate.value.perOpenDay
    if (after.found === null || !after.found.ok || before.left === null || !before.left.ok) return null
    const [now, then] = [
      scale(after.found.value, weight, 'mL/rack'),
      scale(before.left.value, weight, 'mL/rack'),
    ]
    if (!now.ok || !then.ok) return null
    found.push(now.value)
    left.push(then.value)
  }
  if (found.length === 0) return null
  const ratio = chain(sum(found, 'mL/rack'), (now) =>
    chain(sum(left, 'mL/rack'), (then) =>
      quotient(now, then, 'percent', { shared: ['dose-seconds', 'density'] }),
    ),
  )
  return ratio.ok ? { value: ratio.value.value - 1, standard: ratio.value.standard } : null
}
