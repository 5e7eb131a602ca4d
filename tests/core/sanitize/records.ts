import type { Machine, Product, Pump } from '#core/records/index'

/** A machine, product or pump with nothing filled in, and what the test is about on top. */
export const machine = (changes: Partial<Machine> = {}): Machine => ({
  id: '00000000-0000-4000-8000-000000000001',
  name: 'Machine under test',
  class: 'door',
  sanitizing: 'hot-water',
  wash: {
    kind: 'tank',
    volume: null,
    drainAndFillsPerDay: null,
    closure: 'continuous',
    carriedOut: null,
    upstream: null,
    feeding: 'with-rinse',
  },
  rinse: null,
  boosterVolume: null,
  dataPlate: {
    washTemperatureMin: null,
    rinseTemperatureMin: null,
    rinseTemperatureMax: null,
    rinsePressureMin: null,
    rinsePressureMax: null,
  },
  racksPerDay: null,
  racksSpread: null,
  pumps: [],
  ...changes,
})

export const product = (id: string, changes: Partial<Product> = {}): Product => ({
  id,
  name: id,
  role: 'other',
  density: null,
  strength: { kind: 'none' },
  hazards: [],
  containerSize: null,
  prices: [],
  labelLimits: null,
  safetySheet: '',
  deliveredOn: null,
  shelfLifeDays: null,
  leadTimeDays: null,
  ...changes,
})

export const pump = (id: string, productId: string | null, changes: Partial<Pump> = {}): Pump => ({
  id,
  name: id,
  role: 'other',
  productId,
  feeds: 'final-rinse',
  doseSeconds: null,
  doseSecondsSpread: null,
  initialChargeSeconds: null,
  control: 'time',
  setBy: 'screw',
  kind: '',
  rollers: null,
  tube: { fittedOn: null, outsideDiameter: null, bore: null, lineLength: null, replaceAfterDays: null },
  screwStops: { up: null, down: null },
  window: null,
  ...changes,
})
