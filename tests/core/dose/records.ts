import type { DoseContext } from '#core/dose/on-basis'
import type { Pump, RinseWater, Strength } from '#core/records/index'
import type { BudgetSource } from '#core/statistics/estimate'
import { estimate } from '#core/statistics/make-estimate'
import { product, tube } from '#tests/core/drawdown/records'
import { good } from '#tests/support/outcomes'

/** Fresh rinse water caught per rack, L, with no doubt unless a percentage is given. */
export const rinse = (litres: number | string, spread = '0'): RinseWater => ({
  kind: 'measured',
  perRack: { value: String(litres), unit: 'L' },
  spread,
})

export const trade = (percent: number | string): Strength => ({
  kind: 'trade-percent',
  percent: String(percent),
  measuredOn: '2026-03-01',
})

export const quat = (percent: number | string): Strength => ({
  kind: 'weight-percent',
  percent: String(percent),
  active: 'quat',
  measuredOn: null,
})

export const context = (
  litres: number | string,
  strength: Strength = { kind: 'none' },
  density: number | string = '1.02',
): DoseContext => ({
  rinse: rinse(litres),
  product: product({ density: { value: String(density), unit: 'g/mL' }, strength }),
})

/** A dose or flow with one line of doubt. */
export const mLPerRack = (value: number, standard = 0, source: BudgetSource = 'replicates') =>
  good(estimate(value, 'mL/rack', [{ source, standard }]))
export const mLPerMin = (value: number, standard = 0, source: BudgetSource = 'replicates') =>
  good(estimate(value, 'mL/min', [{ source, standard }]))

export const pump = (over: Partial<Pump> = {}): Pump => ({
  id: 'pump',
  name: 'Rinse aid',
  role: 'rinse-aid',
  productId: 'product',
  feeds: 'final-rinse',
  doseSeconds: { value: '12', unit: 's' },
  doseSecondsSpread: '0',
  initialChargeSeconds: null,
  control: 'time',
  setBy: 'screw',
  kind: '',
  rollers: null,
  tube: tube(),
  screwStops: { up: null, down: null },
  window: null,
  ...over,
})
