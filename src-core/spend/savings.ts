import { all, chain, fail, type Outcome } from '../outcome'
import type { Day, Id, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { scale, sum } from '../statistics/propagate'
import { addDays, daysBetween } from '../units/days'
import { DAYS_PER_MONTH } from './calendar'
import { testsOf } from './history'
import type { SiteInTime } from './product-over'
import { pumpSaving } from './saving'
import { averageMonth } from './span'
import type { PumpSaving } from './types'

/** What one visit saved at one pump, and what that came to until the pump was tested again. */
export interface VisitSaving extends PumpSaving {
  readonly visitId: Id
  readonly on: Day
  readonly productId: Id | null
  /** days within the last year for which it held */
  readonly heldDays: number
  /** money over those days */
  readonly soFar: Outcome<Estimate<'money/month'>>
}

export interface YearSavings {
  readonly from: Day
  readonly visits: readonly VisitSaving[]
  /** the sum over the last year; the racks are shared by all visits. `missing` history before any has held for a day */
  readonly total: Outcome<Estimate<'money/month'>>
  /** visits whose saving could not be worked out */
  readonly unknown: number
}

/**
 * Found-to-left savings of the last 365 days, each counted from its visit until that pump's next test or today. A visit
 * that left a pump as it was has none.
 */
export function yearSavings(inTime: SiteInTime, products: readonly Product[], asOf: Day): YearSavings {
  const from = addDays(asOf, -365)
  const visits = inTime.site.machines
    .flatMap((machine) =>
      machine.pumps.flatMap((pump) => {
        const tests = testsOf(inTime.doses, pump.id)
        return tests.flatMap((test, index): readonly VisitSaving[] => {
          if (test.found === null || test.left === null || !test.changed) return []
          const until = tests[index + 1]?.on ?? asOf
          const start = test.on > from ? test.on : from
          const heldDays = daysBetween(start, until < asOf ? until : asOf)
          if (test.on > asOf || heldDays < 0 || (heldDays === 0 && test.on <= from)) return []
          const saving = pumpSaving({
            pump,
            machine,
            product: products.find((product) => product.id === pump.productId) ?? null,
            currency: inTime.site.currency,
            day: test.on,
            span: averageMonth(inTime.calendar),
            racks: inTime.racks.get(machine.id) ?? fail({ code: 'not-found', what: machine.name }),
            found: test.found,
            left: test.left,
            sameInstrument: test.sameInstrument,
          })
          return [
            {
              ...saving,
              visitId: test.visitId,
              on: test.on,
              productId: pump.productId,
              heldDays,
              soFar: chain(saving.moneyPerMonth, (money) =>
                scale(money, heldDays / DAYS_PER_MONTH, 'money/month'),
              ),
            },
          ]
        })
      }),
    )
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
  const known = visits.flatMap((visit) => (visit.soFar.ok ? [visit.soFar] : []))
  const held = visits.some((visit) => visit.soFar.ok && visit.heldDays > 0)
  return {
    from,
    visits,
    total: chain(all(known), (parts) =>
      !held
        ? fail({ code: 'missing', field: 'visits', needed: 'history' })
        : sum(parts, 'money/month', { shared: ['racks'] }),
    ),
    unknown: visits.length - known.length,
  }
}
