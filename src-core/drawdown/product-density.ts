import { oncePer } from '../once'
import { fail, type Outcome } from '../outcome'
import type { Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { rectangular } from '../statistics/rectangular'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'

/** Outside this no product of the trade lies, g/mL; a number beyond is a slip of the pen. Judgement. */
export const DENSITY = { low: 0.8, high: 1.6 } as const

/** A data sheet's density is for 20 °C and a nominal batch: 1 % either way. Judgement. */
const SHEET_SHARE = 0.01

/**
 * Density of a product, g/mL, with its doubt: anywhere within 1 % of the sheet's figure.
 *
 * Problems: `missing` product or density, and `number-out-of-range` outside 0.8 to 1.6 g/mL.
 */
export const productDensity = (product: Product | null): Outcome<Estimate<'g/mL'>> =>
  product === null
    ? fail({ code: 'missing', field: 'pump.productId', needed: 'product' })
    : densityOf(product)

const densityOf = oncePer((product: Product): Outcome<Estimate<'g/mL'>> => {
  if (product.density === null) return fail({ code: 'missing', field: 'product.density', needed: 'density' })
  const density = read(product.density, 'product.density', DENSITY)
  if (!density.ok) return density
  const rho = inUnit(density.value, 'g/mL')
  return estimate(rho, 'g/mL', [{ source: 'density', standard: rectangular(SHEET_SHARE * rho) }])
})
