import type { Machine, Product, Pump, Site } from '#core/records/index'

let count = 0
/** Ids in the order they are asked for, so that a test reads the same each time. */
export const nextId = (): string => `00000000-0000-4000-8000-${String((count += 1)).padStart(12, '0')}`

export const AT = '2026-03-09T14:05:00.000Z'
export const PUMP = 'a0000000-0000-4000-8000-000000000001'
export const PUMP_2 = 'a0000000-0000-4000-8000-000000000002'
export const MACHINE = 'b0000000-0000-4000-8000-000000000001'
export const PRODUCT = 'c0000000-0000-4000-8000-000000000001'

export const product: Product = {
  id: PRODUCT,
  name: 'Clear finish',
  role: 'rinse-aid',
  density: { value: '1.02', unit: 'g/mL' },
  strength: { kind: 'none' },
  hazards: ['irritant'],
  containerSize: { value: '5', unit: 'L' },
  prices: [],
  labelLimits: null,
  safetySheet: '',
  deliveredOn: null,
  shelfLifeDays: null,
  leadTimeDays: null,
}

export const pump = (id: string, name: string): Pump => ({
  id,
  name,
  role: 'rinse-aid',
  productId: PRODUCT,
  feeds: 'final-rinse',
  doseSeconds: { value: '9', unit: 's' },
  doseSecondsSpread: null,
  initialChargeSeconds: null,
  control: 'time',
  setBy: 'screw',
  kind: 'small',
  rollers: null,
  tube: { fittedOn: null, outsideDiameter: null, bore: null, lineLength: null, replaceAfterDays: null },
  screwStops: { up: null, down: null },
  window: { basis: 'ppm-vv', low: '200', target: '250', high: '300' },
})

const machine: Machine = {
  id: MACHINE,
  name: 'Bar',
  class: 'undercounter',
  sanitizing: 'hot-water',
  wash: { kind: 'dump-and-refill', heel: null, fill: null },
  rinse: { kind: 'measured', perRack: { value: '3.785', unit: 'L' }, spread: null },
  boosterVolume: null,
  dataPlate: {
    washTemperatureMin: null,
    rinseTemperatureMin: null,
    rinseTemperatureMax: null,
    rinsePressureMin: null,
    rinsePressureMax: null,
  },
  racksPerDay: '45',
  racksSpread: null,
  pumps: [pump(PUMP, 'Rinse aid'), pump(PUMP_2, 'Second')],
}

export const emptySite = (): Site =>
  freeze({
    id: 'd0000000-0000-4000-8000-000000000001',
    name: 'Lantern Lane Cafe',
    currency: 'USD',
    units: 'metric',
    timeZone: 'UTC',
    notes: '',
    visitEveryDays: '28',
    calendar: { daysPerWeek: '7', closures: [], seasons: [], growthPercentPerYear: null },
    water: {
      hardness: null,
      solids: null,
      conductivity: null,
      alkalinity: null,
      calcium: null,
      pH: null,
      temperature: null,
      softener: 'none',
    },
    machines: [machine],
    visits: [],
    stock: [],
    snapshots: [],
    scenarios: [],
    glassChecks: [],
  })

/** Frozen all the way down: an edit that wrote into its input would throw. */
export function freeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    Object.values(value).forEach(freeze)
  }
  return value
}
