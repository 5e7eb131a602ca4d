import type { Product } from '../records'
import { isOutsideLabel } from '../sanitize/label-limits'
import type { PumpState, PumpVisit } from './types'

/**
 * Whether a sanitizer stands where its ware must not be served on: its last test lies outside the window, or outside
 * what the label allows, which a window may be wider than. `label`: as recorded with its product.
 */
export const mustNotServe = (
  pump: Pick<PumpVisit, 'role' | 'asLeft'>,
  state: PumpState,
  label: Product['labelLimits'],
): boolean =>
  pump.role === 'sanitizer' &&
  (state === 'proved-out' ||
    state === 'out-not-proved' ||
    isOutsideLabel(label, pump.asLeft?.strengths ?? []))
