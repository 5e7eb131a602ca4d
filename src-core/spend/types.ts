import type { Outcome } from '../outcome'
import type { CurrencyCode, Day, Id } from '../records'
import type { Estimate } from '../statistics/estimate'
import type { Decimal } from '../units/decimal'

/** Racks on an ordinary open day of one machine, and how they are known. */
export interface RackRate {
  readonly from: 'stated' | 'counter'
  readonly perOpenDay: number
  /** standard uncertainty over the value */
  readonly relativeStandard: number
  readonly stated: number | null
  readonly counted: CountedRacks | null
  /** counted over stated, less one; null unless both are known */
  readonly gap: number | null
}

/** What two or more readings of a rack counter say. */
export interface CountedRacks {
  readonly from: Day
  readonly to: Day
  readonly racks: number
  readonly perOpenDay: number
  readonly relativeStandard: number
}

/** A pump's setting as last known: what the worksheet found by test. Null: never tested. */
export interface PumpSetting {
  readonly pumpId: Id
  readonly dose: Outcome<Estimate<'mL/rack'>> | null
  readonly flow: Outcome<Estimate<'mL/min'>> | null
}

/** Where a month's litres of one pump go. */
export interface UseParts {
  readonly racks: number
  readonly charges: number
  readonly priming: number
}

/** Something taken for granted because the record does not say it. */
export type UseAssumption = 'racks-spread' | 'no-initial-charge' | 'no-priming-loss' | 'probe-holds-target'

/** Month's use of one product by one pump at its last known setting. */
export interface PumpUse {
  readonly pumpId: Id
  readonly productId: Id | null
  readonly racksPerMonth: Outcome<number>
  /** `target`: a probe holds the tank's target, whatever the flow */
  readonly doseFrom: 'as-left' | 'target' | 'none'
  readonly dose: Outcome<Estimate<'mL/rack'>>
  readonly litresPerMonth: Outcome<Estimate<'L/month'>>
  readonly parts: UseParts | null
  readonly containersPerMonth: Outcome<number>
  /** rounded to the minor unit: one line of a bill */
  readonly costPerMonth: Outcome<Decimal>
  /** rounded to a thousandth of the minor unit, half-up */
  readonly costPerRack: Outcome<Decimal>
  /** money a month with its interval, unrounded */
  readonly costEstimate: Outcome<Estimate<'money/month'>>
  readonly assumptions: readonly UseAssumption[]
}

export interface SpendTotals {
  /** the sum of the rounded lines; the first problem when a line has none */
  readonly costPerMonth: Outcome<Decimal>
  readonly costPerRack: Outcome<Decimal>
  readonly racksPerMonth: Outcome<number>
  /** the sum of the lines that could be costed, and how many could not */
  readonly known: Decimal
  readonly unknownLines: number
}

/** A price that holds on a day. */
export interface PriceOnDay {
  readonly from: Day
  readonly currency: CurrencyCode
  readonly perContainer: Decimal
  /** L */
  readonly containerLitres: Decimal
  readonly perLitre: Decimal
}

/** What an adjustment changed: positive when less product is used than as found. */
export interface PumpSaving {
  readonly pumpId: Id
  readonly litresPerMonth: Outcome<Estimate<'L/month'>>
  readonly moneyPerMonth: Outcome<Estimate<'money/month'>>
}

/** What one visit found and left at one pump, as the worksheet worked it out. Null: not tested. */
export interface PumpDose {
  readonly visitId: Id
  readonly pumpId: Id
  readonly on: Day
  readonly found: Outcome<Estimate<'mL/rack'>> | null
  readonly left: Outcome<Estimate<'mL/rack'>> | null
  readonly flowLeft: Outcome<Estimate<'mL/min'>> | null
  /** the screw was turned, or a tube fitted, between the two */
  readonly changed: boolean
  /** both tests were read on one instrument */
  readonly sameInstrument: boolean
}
