import type { Verification } from '../records'
import type { StrengthToday } from '../sanitize/strength-today'
import type { Estimate } from '../statistics/estimate'
import { AGREES_BELOW } from './agreement'
import type { Distrust, VerifiedUnit } from './types'

/** What is known around a check that disagrees. */
export interface Circumstances {
  readonly check: Verification
  readonly measured: Estimate<VerifiedUnit>
  readonly predicted: Estimate<VerifiedUnit>
  /** racks washed since the tank was filled or the dose changed; null: not counted */
  readonly racksSinceFill: number | null
  readonly racksBeforeTest: number | null
  /** what the flow before the last change of this visit predicts; null where nothing was changed */
  readonly before: Estimate<VerifiedUnit> | null
  /** the product's strength and what may be left of it; null for a product without one */
  readonly strength: StrengthToday | null
}

/** A share of the prediction's variance that makes one input its weakest link. Judgement. */
const WEAKEST_LINK = 0.5

/**
 * Which of a disagreeing reading and prediction to distrust, and for what reason: the first of the reasons that fits,
 * the ones a person can check at once before the ones that only weigh uncertainties. Judgement, except that ware reads
 * lower than rinse water (a study of 60 samples, p = 0.035) and that soil takes up what a wash tank is given.
 */
export function distrust(around: Circumstances): Distrust {
  const { check, measured, predicted } = around
  if (measured.unit === 'mg/L-CaCO3') return 'hardness-changed'
  const low = measured.value < predicted.value
  const inTank = check.where === 'wash-tank'
  const settled =
    around.racksSinceFill === null ||
    around.racksBeforeTest === null ||
    around.racksSinceFill >= around.racksBeforeTest
  if (inTank && !settled) return 'tank-not-settled'
  if (!inTank && onTheWay(around)) return 'booster-not-through'
  if (check.where === 'ware' && low) return 'read-on-ware'
  if (check.method === 'strip' && oneMorePadAgrees(measured, predicted)) return 'strip-between-pads'
  if (low && aged(around)) return 'product-aged'
  if (inTank && !low && check.blank === null && check.method.startsWith('alkalinity'))
    return 'water-not-subtracted'
  if (inTank && low) return 'soil-or-leak'
  if (share(predicted, 'rinse-volume') > WEAKEST_LINK) return 'rinse-volume-unsure'
  return relative(measured) >= relative(predicted) && !predicted.predicted
    ? 'reading-less-certain'
    : 'prediction-less-certain'
}

/** Which side a reason speaks against; those of water from before say that neither counts yet. */
export function speaksAgainst(reason: Distrust): 'reading' | 'prediction' | 'neither' {
  switch (reason) {
    case 'tank-not-settled':
    case 'booster-not-through':
      return 'neither'
    case 'read-on-ware':
    case 'strip-between-pads':
    case 'water-not-subtracted':
    case 'reading-less-certain':
      return 'reading'
    case 'hardness-changed':
    case 'product-aged':
    case 'soil-or-leak':
    case 'rinse-volume-unsure':
    case 'prediction-less-certain':
      return 'prediction'
  }
}

/** Between what was predicted before the last change and what is predicted now, as far as both can be told. */
function onTheWay({ before, measured, predicted }: Circumstances): boolean {
  if (before === null) return false
  const whole = before.value - predicted.value
  const gone = measured.value - predicted.value
  const doubt = AGREES_BELOW * Math.hypot(measured.standard, before.standard)
  return gone * whole > 0 && Math.abs(gone) <= Math.abs(whole) + doubt
}

/** Half a pad is in the reading's doubt already; a whole pad is twice that. */
const oneMorePadAgrees = (measured: Estimate<VerifiedUnit>, predicted: Estimate<VerifiedUnit>): boolean =>
  Math.abs(measured.value - predicted.value) <
  AGREES_BELOW * Math.hypot(2 * measured.standard, predicted.standard)

/**
 * The record is old or undated, or the estimate of what is left brings the two together. Only a prediction of the active
 * substance rests on that record: what a tank holds in g of product per litre does not.
 */
function aged({ strength, measured, predicted }: Circumstances): boolean {
  if (strength === null || measured.unit !== 'mg/L-active') return false
  if (strength.warning !== null) return true
  if (!strength.estimatedNow.ok || !(strength.recorded > 0)) return false
  const left = strength.estimatedNow.value.value / strength.recorded
  const doubt = Math.hypot(measured.standard, predicted.standard)
  return left < 1 && Math.abs(measured.value - left * predicted.value) < AGREES_BELOW * doubt
}

const relative = (of: Estimate<VerifiedUnit>): number =>
  of.value > 0 ? of.standard / of.value : Number.POSITIVE_INFINITY

const share = (of: Estimate<VerifiedUnit>, source: 'rinse-volume'): number =>
  of.budget.find((line) => line.source === source)?.share ?? 0
