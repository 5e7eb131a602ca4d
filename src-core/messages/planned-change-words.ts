import type { Product, ProductRole, Pump } from '../records'
import { suits } from '../cautions/planned-change'

/** What a role is called within a sentence. */
const WORK: Record<ProductRole, string> = {
  'rinse-aid': 'rinse aid',
  detergent: 'detergent',
  sanitizer: 'sanitizer',
  delimer: 'delimer',
  other: 'a product without a role',
}

/** Why a planned product does not belong at a pump; null where it may be thought of. */
export const notForPumpWords = (
  pump: Pick<Pump, 'role'>,
  product: Pick<Product, 'name' | 'role'>,
): string | null =>
  suits(pump, product)
    ? null
    : `This pump feeds ${WORK[pump.role]}, and ${product.name === '' ? 'this product' : product.name} is ${product.role === 'rinse-aid' || product.role === 'detergent' ? '' : 'a '}${WORK[product.role]}: it does not do that work, whatever it costs. Choose another one; the label says where it belongs.`
