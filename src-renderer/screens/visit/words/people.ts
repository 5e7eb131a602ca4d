import type { Advice, ProductRole } from '#core/records/index'

export const ROLE_NAMES: Record<ProductRole, string> = {
  'rinse-aid': 'Rinse aid',
  detergent: 'Detergent',
  sanitizer: 'Sanitizer',
  delimer: 'Delimer',
  other: 'Other',
}

export const ADVISED: Record<Advice['to'], string> = {
  operator: 'Kitchen',
  rep: 'Service rep',
  technician: 'Technician',
}
