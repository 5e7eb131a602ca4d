import { feedsATank } from '../dose/feeds-a-tank'
import type { BasisUnit } from '../dose/types'
import { chain, fail, type Outcome } from '../outcome'
import type { Pump, Verification, Water } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { scale } from '../statistics/propagate'
import { rectangular } from '../statistics/rectangular'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { METHOD_RULES } from './method-rules'
import type { VerifiedUnit } from './types'

/** What flow, seconds and water say the strength should be. */
export interface Predictions {
  /** the pump's last test on every basis its inputs allow */
  readonly strengths: readonly Outcome<Estimate<BasisUnit>>[]
  /** what the wash tank settles at */
  readonly settlesAt: Outcome<Estimate<'g/L-product'>>
  readonly water: Water
}

/** A hardness on record may have changed since: 10 % either way. Judgement. */
const RECORDED_HARDNESS_SHARE = 0.1

/**
 * What the flow test leads one to expect where the check was made, in the unit of the check.
 *
 * Problems: `not-predicted` for a sanitizer in the wash tank, where soil takes it whatever the dose, and for a place the
 * pump does not feed; `no-runs` when the pump was not tested; those of the strength itself; hardness not on record.
 */
export function predictedStrength(
  check: Pick<Verification, 'method' | 'where'>,
  pump: Pick<Pump, 'feeds'>,
  known: Predictions,
): Outcome<Estimate<VerifiedUnit>> {
  const unit = METHOD_RULES[check.method].result
  if (unit === 'mg/L-CaCO3') return recordedHardness(known.water)
  const inTank = check.where === 'wash-tank'
  if (inTank !== feedsATank(pump) || (inTank && unit === 'mg/L-active'))
    return fail({ code: 'cannot-compute', reason: 'not-predicted' })
  if (inTank) return known.settlesAt
  if (unit === 'mg/L-active') return onUnit(known.strengths, 'mg/L-active')
  return chain(onUnit(known.strengths, 'mg/L-product'), (strength) => scale(strength, 0.001, 'g/L-product'))
}

/** The strength on one basis; where none was worked out, the first problem that stood in the way. */
function onUnit(strengths: Predictions['strengths'], unit: BasisUnit): Outcome<Estimate<BasisUnit>> {
  const found = strengths.find((each) => each.ok && each.value.unit === unit)
  if (found !== undefined) return found
  if (strengths.length === 0) return fail({ code: 'no-runs' })
  return (
    strengths.find((each) => !each.ok) ??
    fail({ code: 'missing', field: 'product.strength', needed: 'strength' })
  )
}

function recordedHardness(water: Water): Outcome<Estimate<'mg/L-CaCO3'>> {
  if (water.hardness === null) return fail({ code: 'missing', field: 'water.hardness', needed: 'water' })
  const typed = read(water.hardness, 'water.hardness', { low: 0 })
  if (!typed.ok) return typed
  const value = inUnit(typed.value, 'mg/L-CaCO3')
  return estimate(value, 'mg/L-CaCO3', [
    { source: 'reading', standard: rectangular(RECORDED_HARDNESS_SHARE * value) },
  ])
}
