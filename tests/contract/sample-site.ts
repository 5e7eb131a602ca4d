import type { Instrument, Machine, Product, Pump, Settings, Site, Visit } from '#core/records/index'

/** A site with every kind of thing in it once, invented, for tests of documents, storage and hosts. */

let counter = 0
/** A fresh UUID, the same in every run of one test file. */
export const newId = (): string => {
  counter += 1
  return `00000000-0000-4000-8000-${counter.toString(16).padStart(12, '0')}`
}

export const product = (changes: Partial<Product> = {}): Product => ({
  id: newId(),
  name: 'Rinse aid',
  role: 'rinse-aid',
  density: { value: '1.02', unit: 'g/mL' },
  strength: { kind: 'weight-percent', percent: '10', active: 'surfactant', measuredOn: null },
  hazards: ['irritant'],
  containerSize: { value: '5', unit: 'L' },
  prices: [{ from: '2025-01-01', currency: 'EUR', price: '24.50', containerSize: { value: '5', unit: 'L' } }],
  labelLimits: null,
  safetySheet: 'Binder in the chemical store',
  deliveredOn: null,
  shelfLifeDays: null,
  leadTimeDays: null,
  ...changes,
})

export const instrument = (changes: Partial<Instrument> = {}): Instrument => ({
  id: newId(),
  name: 'Cylinder 50 mL',
  kind: 'cylinder',
  capacity: { value: '50', unit: 'mL' },
  graduation: { value: '1', unit: 'mL' },
  tolerance: { value: '0.50', unit: 'mL' },
  bore: { value: '23.0', unit: 'mm' },
  checkedOn: '2025-02-01',
  ...changes,
})

export const pump = (changes: Partial<Pump> = {}): Pump => ({
  id: newId(),
  name: 'Rinse pump',
  role: 'rinse-aid',
  productId: null,
  feeds: 'final-rinse',
  doseSeconds: { value: '4.0', unit: 's' },
  doseSecondsSpread: null,
  initialChargeSeconds: null,
  control: 'time',
  setBy: 'screw',
  kind: 'small rinse pump',
  rollers: { perMinute: '30', count: '3' },
  tube: {
    fittedOn: '2025-01-10',
    outsideDiameter: { value: '6.35', unit: 'mm' },
    bore: null,
    lineLength: null,
    replaceAfterDays: '180',
  },
  screwStops: { up: null, down: null },
  window: { basis: 'ppm-vv', low: '180', target: '200', high: '220' },
  ...changes,
})

export const machine = (changes: Partial<Machine> = {}): Machine => ({
  id: newId(),
  name: 'Glass machine',
  class: 'undercounter',
  sanitizing: 'hot-water',
  wash: {
    kind: 'tank',
    volume: { value: '15', unit: 'L' },
    drainAndFillsPerDay: '1',
    closure: 'continuous',
    carriedOut: null,
    upstream: null,
    feeding: 'with-rinse',
  },
  rinse: { kind: 'measured', perRack: { value: '3.00', unit: 'L' }, spread: '2' },
  boosterVolume: null,
  dataPlate: {
    washTemperatureMin: { value: '150', unit: 'degF' },
    rinseTemperatureMin: { value: '180', unit: 'degF' },
    rinseTemperatureMax: null,
    rinsePressureMin: { value: '15', unit: 'psi' },
    rinsePressureMax: null,
  },
  racksPerDay: '45',
  racksSpread: null,
  pumps: [pump()],
  ...changes,
})

export const visit = (pumpId: string, instrumentId: string | null, changes: Partial<Visit> = {}): Visit => ({
  id: newId(),
  startedAt: '2025-03-01T09:00:00.000Z',
  by: 'A. Rep',
  checks: [],
  readings: [],
  work: [
    {
      pumpId,
      steps: [
        {
          kind: 'test',
          id: newId(),
          at: '2025-03-01T09:10:00.000Z',
          method: 'draw-down',
          instrumentId,
          tubeImmersed: true,
          primed: true,
          productTemperature: null,
          runs: [
            {
              id: newId(),
              start: { value: '48.5', unit: 'mL' },
              end: { value: '38.0', unit: 'mL' },
              seconds: { value: '60.0', unit: 's' },
              excluded: null,
            },
          ],
        },
        { kind: 'turn', id: newId(), at: '2025-03-01T09:15:00.000Z', eighths: 2 },
      ],
      verifications: [],
    },
  ],
  cautions: [],
  advice: [],
  notes: '',
  closing: null,
  setupId: null,
  amendments: [],
  ...changes,
})

export const site = (changes: Partial<Site> = {}): Site => ({
  id: newId(),
  name: 'Corner Cafe',
  currency: 'EUR',
  units: 'metric',
  timeZone: 'Europe/Vienna',
  notes: '',
  visitEveryDays: '30',
  calendar: { daysPerWeek: '6', closures: [], seasons: [], growthPercentPerYear: null },
  water: {
    hardness: { value: '12', unit: 'deg-dH' },
    solids: null,
    conductivity: null,
    alkalinity: null,
    calcium: null,
    pH: '7.4',
    temperature: null,
    softener: 'none',
  },
  machines: [machine()],
  visits: [],
  stock: [],
  snapshots: [],
  scenarios: [],
  glassChecks: [],
  ...changes,
})

/** A site with one closed visit and the set-up it was closed with, its product and its instrument. */
export function siteWithClosedVisit(): {
  readonly site: Site
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
} {
  const rinseAid = product()
  const cylinder = instrument()
  const rinsePump = pump({ productId: rinseAid.id })
  const machines = [machine({ pumps: [rinsePump] })]
  const base = site({ machines })
  const setup = {
    id: newId(),
    at: '2025-03-01T10:00:00.000Z',
    machines,
    water: base.water,
    products: [rinseAid],
    instruments: [cylinder],
  }
  const closed = visit(rinsePump.id, cylinder.id, {
    closing: { at: setup.at, nextVisitOn: '2025-04-01', customerName: 'B. Owner', signedBy: 'B. O.' },
    setupId: setup.id,
  })
  return {
    site: { ...base, visits: [closed], snapshots: [setup] },
    products: [rinseAid],
    instruments: [cylinder],
  }
}

export const settings: Settings = {
  repName: 'A. Rep',
  firmName: 'Example Service',
  decimalSign: 'point',
  theme: 'system',
  sheet: 'A4',
  currency: 'EUR',
  units: 'metric',
  protocol: { runs: '3', seconds: '60' },
  cautionTexts: [],
  codeLimits: [],
  glassWeights: [],
  deliveryColumns: [],
  serviceLevel: '95',
}
