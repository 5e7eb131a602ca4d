import { Decimal as DecimalJs } from 'decimal.js'

/**
 * The one decimal of the program: 40 significant digits, half-up. Cloned, because decimal.js keeps its settings on
 * the constructor. This file is the only importer of decimal.js.
 */
export const Decimal = DecimalJs.clone({ precision: 40, rounding: DecimalJs.ROUND_HALF_UP })
export type Decimal = InstanceType<typeof Decimal>
