import { all, chain, ok, type Outcome } from '../outcome'
import type { Reconciliation } from '../spend/reconcile-types'
import { DAY_SPREAD, LEAD_SPREAD, type Reorder } from '../spend/reorder'
import type { DecimalSign } from '../units/parse'
import type { Working } from './types'
import { line, put } from './working'

/** The working of stock against theory, in standard uncertainties. Problems: those of the reconciliation. */
export function explainReconciliation(row: Reconciliation, sign: DecimalSign = 'point'): Outcome<Working> {
  const parts = all([row.opening, row.delivered, row.closing, row.actual, row.theory, row.variance])
  return chain(parts, ([opening, delivered, closing, actual, theory, variance]) =>
    ok({
      title: 'Stock against theory',
      formula: 'z = (S₁ + B − S₂ − T) / √(u(S)² + u(T)²)',
      inputs: [
        line('S₁', `Counted on ${row.from}`, opening.value, 'L'),
        line('B', 'Delivered between', delivered.value, 'L'),
        line('S₂', `Counted on ${row.to}`, closing.value, 'L'),
        line('T', 'What the pumps should have used', theory.value, 'L'),
        line('u(S)', 'Standard uncertainty of the counts', actual.standard, 'L'),
        line('u(T)', 'Standard uncertainty of the theory', theory.standard, 'L'),
      ],
      substituted: `z = ${put(variance.value, sign)} / √(${put(actual.standard, sign)}² + ${put(theory.standard, sign)}²)`,
      result: line('z', 'Difference in standard uncertainties', row.z ?? 0, ''),
      source: 'JCGM 100:2008 (GUM) 5.1.2; below two, counting cannot tell a difference (common practice).',
      assumptions: [
        'The pumps ran at what their last tests left; a level is read to 5 % of a container, a weight to 1 %.',
      ],
    }),
  )
}

/** The working of a reorder point. */
export function explainReorder(advice: Reorder, sign: DecimalSign = 'point'): Working {
  return {
    title: 'When to order',
    formula: 'R = d × L + SS',
    inputs: [
      line('d', 'Use a day between order and delivery', advice.perDay, 'L'),
      line('L', 'Days from order to delivery', advice.leadDays, 'days'),
      line('SS', 'Safety stock', advice.safetyStock, 'L'),
    ],
    substituted: `R = ${put(advice.perDay, sign)} × ${put(advice.leadDays, sign)} + ${put(advice.safetyStock, sign)}`,
    result: line('R', 'Order when this much is left', advice.reorderPoint, 'L'),
    source:
      'W. J. Stevenson, Operations Management, 14th ed., ch. 12: safety stock = z × √(L s_d² + d² s_L²), with the doubt about d added.',
    assumptions: [
      `From day to day use varies by ${100 * DAY_SPREAD} %, the delivery time by ${100 * LEAD_SPREAD} % (standard; our judgement).`,
      'Days closed, seasons and growth count as the calendar has them.',
    ],
  }
}
