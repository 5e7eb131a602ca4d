import type { Instrument, Machine, Product, Pump, Run, Site, Step, Test, Visit } from '#core/records/index'
import { entry } from '#core/units/entry'
import type { Entry } from '#core/units/entry'

/** Builders of small records for tests. Every one returns a whole, decodable record; overrides say what a test is about. */

let made = 0
export const uuid = (): string => {
  made += 1
  return `00000000-0000-4000-a000-${String(made).padStart(12, '0')}`
}

export const product = (over: Partial<Product> = {}): Product => ({
  id: uuid(),
  name: 'Rinse aid, 5 L',
  role: 'rinse-aid',
  density: entry('1.02', 'g/mL'),
  strength: { kind: 'none' },
  hazards: [],
  containerSize: entry('5', 'L'),
  prices: [{ from: '2026-01-01', currency: 'EUR', price: '36', containerSize: entry('5', 'L') }],
  labelLimits: null,
  safetySheet: '',
  deliveredOn: null,
  shelfLifeDays: null,
  leadTimeDays: null,
  ...over,
})

export const cylinder = (over: Partial<Instrument> = {}): Instrument => ({
  id: uuid(),
  name: '50 mL cylinder',
  kind: 'cylinder',
  capacity: entry('50', 'mL'),
  graduation: entry('1', 'mL'),
  tolerance: entry('0.5', 'mL'),
  bore: null,
  checkedOn: null,
  ...over,
})

export const pump = (over: Partial<Pump> = {}): Pump => ({
  id: uuid(),
  name: 'Rinse aid pump',
  role: 'rinse-aid',
  productId: null,
  feeds: 'final-rinse',
  doseSeconds: entry('9', 's'),
  doseSecondsSpread: '0',
  initialChargeSeconds: null,
  control: 'time',
  setBy: 'screw',
  kind: '',
  rollers: null,
  tube: { fittedOn: null, outsideDiameter: null, bore: null, lineLength: null, replaceAfterDays: null },
  screwStops: { up: null, down: null },
  window: null,
  ...over,
})

export const machine = (over: Partial<Machine> = {}): Machine => ({
  id: uuid(),
  name: 'Machine',
  class: 'undercounter',
  sanitizing: 'hot-water',
  wash: {
    kind: 'tank',
    volume: entry('15', 'L'),
    drainAndFillsPerDay: '1',
    closure: 'continuous',
    carriedOut: null,
    upstream: null,
    feeding: 'with-rinse',
  },
  rinse: { kind: 'measured', perRack: entry('3.785', 'L'), spread: '0' },
  boosterVolume: null,
  dataPlate: {
    washTemperatureMin: null,
    rinseTemperatureMin: null,
    rinseTemperatureMax: null,
    rinsePressureMin: null,
    rinsePressureMax: null,
  },
  racksPerDay: '45',
  racksSpread: '5',
  pumps: [],
  ...over,
})

export const run = (caught: Entry, seconds: Entry<'s' | 'min'> = entry('60', 's')): Run => ({
  id: uuid(),
  start: null,
  end: caught,
  seconds,
  excluded: null,
})

/** Runs caught at the outlet: what was caught is what is read. */
export const caught = (runs: readonly Run[], over: Partial<Test> = {}): Test => ({
  kind: 'test',
  id: uuid(),
  at: '2026-03-09T08:20:00.000Z',
  method: 'catch',
  instrumentId: null,
  tubeImmersed: false,
  primed: true,
  productTemperature: null,
  runs,
  ...over,
})

export const visit = (over: Partial<Visit> = {}): Visit => ({
  id: uuid(),
  startedAt: '2026-03-09T08:10:00.000Z',
  by: 'R. Field',
  checks: [],
  readings: [],
  work: [],
  cautions: [],
  advice: [],
  notes: '',
  closing: null,
  setupId: null,
  amendments: [],
  ...over,
})

export const closing = {
  at: '2026-03-09T09:00:00.000Z',
  nextVisitOn: null,
  customerName: '',
  signedBy: '',
} as const

export const work = (
  pumpId: string,
  steps: readonly Step[],
): { pumpId: string; steps: readonly Step[]; verifications: readonly [] } => ({
  pumpId,
  steps,
  verifications: [],
})

export const site = (over: Partial<Site> = {}): Site => ({
  id: uuid(),
  name: 'A site',
  currency: 'EUR',
  units: 'metric',
  timeZone: 'Europe/Dublin',
  notes: '',
  visitEveryDays: null,
  calendar: { daysPerWeek: '7', closures: [], seasons: [], growthPercentPerYear: null },
  water: {
    hardness: null,
    solids: null,
    conductivity: null,
    alkalinity: null,
    calcium: null,
    pH: null,
    temperature: null,
    softener: 'unknown',
  },
  machines: [],
  visits: [],
  stock: [],
  snapshots: [],
  scenarios: [],
  glassChecks: [],
  ...over,
})
