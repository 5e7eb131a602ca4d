import type { Advice } from '#core/records/index'

export const ADVISED: Record<Advice['to'], string> = {
  operator: 'Kitchen',
  rep: 'Service rep',
  technician: 'Technician',
}
