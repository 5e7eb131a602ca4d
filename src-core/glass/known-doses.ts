import type { Day, Machine } from '../records'
import { daysBetween, doneOn } from '../units/days'
import type { PumpVisit, VisitResult } from '../worksheet/types'
import { fact, oneOf, type KnownFact, type KnownInput } from './known-types'

/** Rinse-aid dose as left, carried on to today by its drift, and detergent strength as titrated, over their targets. */
export function doseFacts({ machine, visits, today, fallPerDay }: KnownInput): readonly KnownFact[] {
  const dose = latest(visits, today, machine, 'rinse-aid', (pump) => {
    const left = pump.asLeft
    if (left === null || !left.decision.ok || !(left.decision.value.target > 0)) return null
    const ratio = left.decision.value.value.value / left.decision.value.target
    const days = Math.max(0, daysBetween(left.at, today))
    return { ratio: ratio * Math.exp(-(fallPerDay.get(pump.pumpId) ?? 0) * days), at: left.at }
  })
  const strength = latest(visits, today, machine, 'detergent', (pump) => {
    const check = pump.verifications.findLast((one) => one.measured.ok && one.method !== 'conductivity')
    const target = pump.asLeft?.decision
    if (check?.measured.ok !== true || target?.ok !== true || !(target.value.target > 0)) return null
    if (check.measured.value.unit !== target.value.value.unit) return null
    return { ratio: check.measured.value.value / target.value.target, at: null }
  })
  return [
    ...(dose === null
      ? []
      : [
          fact('rinse-aid-dose', dose.ratio, dose.day, today, [
            ...oneOf(['ra-dose-low', 'ra-dose-high', 'ra-dose-ok'], doseOutcome(dose.ratio)),
          ]),
        ]),
    ...(strength === null
      ? []
      : [
          fact(
            'detergent-strength',
            strength.ratio,
            strength.day,
            today,
            oneOf(['det-low', 'det-high'], strengthOutcome(strength.ratio)),
          ),
        ]),
  ]
}

/** Dose over target: low below 0.70, high above 1.50, right within 0.15; between these nothing is said. */
export const doseOutcome = (ratio: number): 'ra-dose-low' | 'ra-dose-high' | 'ra-dose-ok' | null =>
  ratio < 0.7
    ? 'ra-dose-low'
    : ratio > 1.5
      ? 'ra-dose-high'
      : Math.abs(ratio - 1) <= 0.15
        ? 'ra-dose-ok'
        : null

/** Titrated strength over target: low below 0.70, high above 1.40. */
export const strengthOutcome = (ratio: number): 'det-low' | 'det-high' | null =>
  ratio < 0.7 ? 'det-low' : ratio > 1.4 ? 'det-high' : null

/** The latest visit in which a pump of the role on this machine gives an answer. */
function latest(
  visits: readonly VisitResult[],
  today: Day,
  machine: Machine,
  role: PumpVisit['role'],
  read: (pump: PumpVisit) => { readonly ratio: number; readonly at: string | null } | null,
): { readonly ratio: number; readonly day: Day } | null {
  const own = new Set(machine.pumps.map((pump) => pump.id))
  for (const visit of visits.toReversed()) {
    if (doneOn(visit.startedAt, today) > today) continue
    for (const pump of visit.pumps) {
      if (pump.role !== role || !own.has(pump.pumpId)) continue
      const found = read(pump)
      if (found !== null && Number.isFinite(found.ratio))
        return { ratio: found.ratio, day: doneOn(found.at ?? visit.startedAt, today) }
    }
  }
  return null
}
