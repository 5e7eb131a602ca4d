import type { WindowBasis } from '../records'
import type { Estimate } from '../statistics/estimate'
import type { UnitName } from '../units/dimensions'

export type BasisUnit = 'mL/rack' | 'ppm-vv' | 'mg/L-product' | 'mg/L-active' | 'g/L-product'

export const BASIS_UNIT = {
  'mL-per-rack': 'mL/rack',
  'ppm-vv': 'ppm-vv',
  'mg-per-L-product': 'mg/L-product',
  'mg-per-L-active': 'mg/L-active',
  'g-per-L-tank': 'g/L-product',
} as const satisfies Record<WindowBasis, UnitName>

export type Verdict = 'proved-in' | 'in-not-proved' | 'out-not-proved' | 'proved-out'

/** The cheapest thing that would settle an open decision. */
export type SettlingStep =
  | { readonly kind: 'more-runs'; readonly runs: number; readonly seconds: number }
  | { readonly kind: 'longer-runs'; readonly runs: number; readonly seconds: number }
  | { readonly kind: 'better-cylinder'; readonly instrumentId: string; readonly seconds: number }
  | { readonly kind: 'turn-first' }
  | { readonly kind: 'cannot-be-settled' }

/** A measured dose against its window, both on the window's own basis. */
export interface Decision {
  readonly verdict: Verdict
  readonly basis: WindowBasis
  readonly value: Estimate<BasisUnit>
  readonly low: number
  readonly target: number
  readonly high: number
  readonly settle: SettlingStep | null
}
