import type { Outcome } from '#core/outcome'
import type { Machine, Product, Pump, Site, StockMovement, Visit } from '#core/records/index'
import { estimate } from '#core/statistics/make-estimate'
import type { PumpSetting } from '#core/spend/types'
import scenarios from '../../references/scenarios.json' with { type: 'json' }

/** Records for the spend tests: every part given by the test, everything else as plain as it can be. */
export const id = (n: number): string => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`

export const aProduct = (over: Partial<Product> = {}): Product => ({
  id: id(1),
  name: 'Rinse aid',
  role: 'rinse-aid',
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
  ...over,
})

export const aPump = (over: Partial<Pump> = {}): Pump => ({
  id: id(11),
  name: 'Rinse aid pump',
  role: 'rinse-aid',
  productId: id(1),
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
  ...over,
})

export const aMachine = (over: Partial<Machine> = {}): Machine => ({
  id: id(21),
  name: 'Glasswasher',
  class: 'undercounter',
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
  ...over,
})

export const aSite = (over: Partial<Site> = {}): Site => ({
  id: id(31),
  name: 'Site',
  currency: 'EUR',
  units: 'metric',
  timeZone: 'UTC',
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
    softener: 'none',
  },
  machines: [],
  visits: [],
  stock: [],
  snapshots: [],
  scenarios: [],
  glassChecks: [],
  ...over,
})

/** A tested setting: flow (mL/min) x seconds, with relative standard uncertainties of flow and of dose seconds. */
export function aSetting(
  pumpId: string,
  flow: number,
  seconds: number,
  uFlow = 0.01,
  uSeconds = 0.02,
): PumpSetting {
  const dose = (flow * seconds) / 60
  return {
    pumpId,
    flow: estimate(flow, 'mL/min', [{ source: 'replicates', standard: flow * uFlow, degreesOfFreedom: 4 }]),
    dose: estimate(dose, 'mL/rack', [
      { source: 'replicates', standard: dose * uFlow, degreesOfFreedom: 4 },
      { source: 'dose-seconds', standard: dose * uSeconds },
    ]),
  }
}

export type Scenario = (typeof scenarios.scenarios)[number]
interface Feed {
  readonly q: number
  readonly t: number
  readonly price: number
  readonly size: number
  readonly rho?: number
  readonly cstar?: number
}

/** A scenario of the reference file as records: price per container = price per litre x size. */
export function scenarioSite(scenario: Scenario): {
  readonly site: Site
  readonly products: readonly Product[]
  readonly settings: readonly PumpSetting[]
} {
  const feeds: readonly (readonly [Feed | undefined, 'rinse-aid' | 'detergent' | 'sanitizer', number])[] = [
    [scenario.ra, 'rinse-aid', 1],
    [scenario.det, 'detergent', 2],
    [scenario.san, 'sanitizer', 3],
  ]
  const here = feeds.flatMap(([feed, role, n]) => (feed === undefined ? [] : [{ feed, role, n }]))
  const products = here.map(({ feed, role, n }) =>
    aProduct({
      id: id(n),
      name: role,
      role,
      density: feed.rho === undefined ? null : { value: String(feed.rho), unit: 'g/mL' },
      prices: [
        {
          from: '2026-01-01',
          currency: 'EUR',
          price: (feed.price * feed.size).toFixed(2),
          containerSize: { value: String(feed.size), unit: 'L' },
        },
      ],
    }),
  )
  const pumps = here.map(({ feed, role, n }) =>
    aPump({
      id: id(10 + n),
      name: role,
      role,
      productId: id(n),
      feeds: role === 'detergent' ? 'wash-tank' : 'final-rinse',
      doseSeconds: { value: String(feed.t), unit: 's' },
      window:
        feed.cstar === undefined
          ? null
          : { basis: 'g-per-L-tank', low: '0', target: String(feed.cstar), high: '9' },
    }),
  )
  const machine = aMachine({
    racksPerDay: String(scenario.racks),
    rinse: { kind: 'measured', perRack: { value: String(scenario.r), unit: 'L' }, spread: null },
    wash:
      scenario.V === null
        ? { kind: 'dump-and-refill', heel: { value: String(scenario.heel), unit: 'L' }, fill: null }
        : {
            kind: 'tank',
            volume: { value: String(scenario.V), unit: 'L' },
            drainAndFillsPerDay: String(scenario.charges),
            closure: 'continuous',
            carriedOut: null,
            upstream: null,
            feeding: 'with-rinse',
          },
    pumps,
  })
  const site = aSite({
    name: scenario.site,
    calendar: { daysPerWeek: String(scenario.days), closures: [], seasons: [], growthPercentPerYear: null },
    machines: [machine],
  })
  return { site, products, settings: here.map(({ feed, n }) => aSetting(id(10 + n), feed.q, feed.t)) }
}

/** The value of an outcome a test expects to be good. */
export const good = <T>(outcome: Outcome<T> | undefined | null): T => {
  if (outcome === undefined || outcome === null || !outcome.ok) throw new Error(JSON.stringify(outcome))
  return outcome.value
}

export const aVisit = (over: Partial<Visit> = {}): Visit => ({
  id: id(41),
  startedAt: '2026-03-01T09:00:00.000Z',
  by: '',
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

/** A stock movement of product 1 in 10 L containers. */
export const aMovement = (over: Partial<StockMovement> = {}): StockMovement => ({
  id: id(61),
  on: '2026-03-01',
  productId: id(1),
  kind: 'count',
  fullContainers: '0',
  containerSize: { value: '10', unit: 'L' },
  part: null,
  tare: null,
  reference: '',
  visitId: null,
  ...over,
})
