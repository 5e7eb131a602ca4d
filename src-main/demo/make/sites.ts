import type { Machine, Product, Pump, Site, TargetWindow, Water } from '#core/records/index'
import type { SiteFile } from '#core/documents/site-schema'
import { entry } from '#core/units/entry'
import { chance, type Chance } from './chance'
import { INSTRUMENTS, PRODUCTS } from './library'
import { tell, type Chapter, type Happening, type PumpTruth, type Story } from './life'

/**
 * The demo sites: invented kitchens with a history in which things go wrong the way they do. Fresh water per rack,
 * racks per day and prices follow the scenarios the formulas are checked with.
 */

const MM_TUBE = entry('6.35', 'mm')

interface PumpPlan {
  readonly name: string
  readonly product: Product
  readonly feeds: Pump['feeds']
  readonly seconds: string
  readonly chargeSeconds?: string
  readonly window: TargetWindow
  readonly kind: string
  readonly fittedOn: string
  /** mL/min at the start and wanted, mL/min per turn, loss a day, scatter */
  readonly truth: readonly [number, number, number, number, number]
}

const window = (basis: TargetWindow['basis'], low: string, target: string, high: string): TargetWindow => ({
  basis,
  low,
  target,
  high,
})

function pumpOf(plan: PumpPlan, luck: Chance): PumpTruth {
  const [flow, wanted, gain, wearPerDay, scatter] = plan.truth
  const pump: Pump = {
    id: luck.uuid(),
    name: plan.name,
    role: plan.product.role,
    productId: plan.product.id,
    feeds: plan.feeds,
    doseSeconds: entry(plan.seconds, 's'),
    doseSecondsSpread: '2',
    initialChargeSeconds: plan.chargeSeconds === undefined ? null : entry(plan.chargeSeconds, 's'),
    control: 'time',
    setBy: 'screw',
    kind: plan.kind,
    rollers: { perMinute: wanted > 60 ? '60' : '30', count: '3' },
    tube: {
      fittedOn: plan.fittedOn,
      outsideDiameter: MM_TUBE,
      bore: entry('3.2', 'mm'),
      lineLength: entry('2', 'm'),
      replaceAfterDays: '365',
    },
    screwStops: { up: null, down: null },
    window: plan.window,
  }
  return { pump, flow, gain, wearPerDay, scatter, wanted }
}

interface SitePlan {
  readonly seed: number
  readonly name: string
  readonly currency: string
  readonly units: Site['units']
  readonly timeZone: string
  readonly notes: string
  readonly daysPerWeek: string
  readonly closures: readonly (readonly [string, string, string])[]
  readonly water: Water
  readonly machines: readonly {
    readonly machine: Omit<Machine, 'id' | 'pumps'>
    readonly pumps: readonly PumpPlan[]
  }[]
  readonly by: string
  readonly chapters: (pumps: readonly Pump[]) => readonly Chapter[]
}

const chapter = (day: string, ...happenings: readonly Happening[]): Chapter => ({ day, happenings })
const note = (text: string): Happening => ({ kind: 'note', text })

const water = (hardness: string, solids: string, softener: Water['softener']): Water => ({
  hardness: entry(hardness, 'mg/L-CaCO3'),
  solids: entry(solids, 'mg/L'),
  conductivity: null,
  alkalinity: null,
  calcium: null,
  pH: '7.6',
  temperature: null,
  softener,
})

const hotWaterPlate: Machine['dataPlate'] = {
  washTemperatureMin: entry('65', 'degC'),
  rinseTemperatureMin: entry('82', 'degC'),
  rinseTemperatureMax: entry('90', 'degC'),
  rinsePressureMin: entry('103', 'kPa'),
  rinsePressureMax: entry('172', 'kPa'),
}

const tank = (litres: string, fills: string, second?: string): Machine['wash'] => ({
  kind: 'tank',
  volume: entry(litres, 'L'),
  drainAndFillsPerDay: fills,
  closure: 'continuous',
  carriedOut: null,
  upstream: second === undefined ? null : { volume: entry(second, 'L') },
  feeding: 'with-rinse',
})

const PLANS: readonly SitePlan[] = [
  {
    seed: 101,
    name: 'Lantern Lane Cafe',
    currency: 'EUR',
    units: 'metric',
    timeZone: 'Europe/Dublin',
    notes: 'Side door after ten. Containers stand under the sink.',
    daysPerWeek: '7',
    closures: [['2025-12-24', '2025-12-27', 'Yearly closing']],
    water: water('96', '210', 'none'),
    by: 'R. Field',
    machines: [
      {
        machine: {
          name: 'Undercounter',
          class: 'undercounter',
          sanitizing: 'hot-water',
          wash: tank('15', '1'),
          rinse: { kind: 'measured', perRack: entry('3.785', 'L'), spread: '2' },
          boosterVolume: entry('6', 'L'),
          dataPlate: hotWaterPlate,
          racksPerDay: '45',
          racksSpread: '5',
        },
        pumps: [
          {
            name: 'Rinse aid pump',
            product: PRODUCTS.rinseSmall,
            feeds: 'final-rinse',
            seconds: '9',
            window: window('ppm-vv', '180', '200', '220'),
            kind: 'small screw-set roller pump',
            fittedOn: '2025-10-02',
            truth: [4.2, 5.05, 2.1, 0.0016, 0.009],
          },
          {
            name: 'Detergent pump',
            product: PRODUCTS.detergentSmall,
            feeds: 'wash-tank',
            seconds: '6.3',
            chargeSeconds: '25',
            window: window('g-per-L-tank', '1.8', '2', '2.2'),
            kind: 'large screw-set roller pump',
            fittedOn: '2025-10-02',
            truth: [55, 60, 26, 0.0007, 0.012],
          },
        ],
      },
    ],
    chapters: ([rinse]) => [
      chapter('2025-11-12', note('First visit. Rinse aid ran short; both set.')),
      chapter('2025-12-17'),
      chapter('2026-01-28'),
      chapter('2026-03-11'),
      chapter('2026-04-22', note('Rinse aid keeps falling between visits.')),
      chapter(
        '2026-06-03',
        { kind: 'tube', pumpId: rinse?.id ?? '', factor: 1.34 },
        note('Pump tube flat and cracked: new tube fitted, recheck in a week.'),
      ),
      chapter('2026-06-10'),
      chapter('2026-07-22'),
      chapter('2026-09-09'),
      chapter('2026-10-14'),
    ],
  },
  {
    seed: 102,
    name: 'Harbourview Hotel bar',
    currency: 'EUR',
    units: 'metric',
    timeZone: 'Europe/Lisbon',
    notes: 'Glasswasher behind the bar; quiet before eleven.',
    daysPerWeek: '7',
    closures: [],
    water: water('18', '340', 'fitted'),
    by: 'R. Field',
    machines: [
      {
        machine: {
          name: 'Bar glasswasher',
          class: 'undercounter',
          sanitizing: 'hot-water',
          wash: tank('12', '2'),
          rinse: {
            kind: 'flow-and-seconds',
            flow: entry('12.5', 'L/min'),
            seconds: entry('12', 's'),
            spread: '3',
          },
          boosterVolume: entry('4', 'L'),
          dataPlate: hotWaterPlate,
          racksPerDay: '110',
          racksSpread: '6',
        },
        pumps: [
          {
            name: 'Rinse aid pump',
            product: PRODUCTS.rinseMedium,
            feeds: 'final-rinse',
            seconds: '9',
            window: window('ppm-vv', '320', '360', '400'),
            kind: 'small screw-set roller pump',
            fittedOn: '2025-09-15',
            truth: [6.6, 6, 2.4, 0.0006, 0.01],
          },
          {
            name: 'Detergent pump',
            product: PRODUCTS.glassDetergent,
            feeds: 'wash-tank',
            seconds: '4.5',
            chargeSeconds: '22',
            window: window('g-per-L-tank', '1.44', '1.6', '1.76'),
            kind: 'large screw-set roller pump',
            fittedOn: '2025-09-15',
            truth: [49, 48.5, 20, 0.0004, 0.011],
          },
        ],
      },
    ],
    chapters: ([rinse]) => [
      chapter('2025-11-20'),
      chapter('2026-01-08'),
      chapter('2026-02-19'),
      chapter('2026-04-02'),
      chapter('2026-05-14'),
      chapter('2026-06-25'),
      chapter('2026-08-06'),
      chapter('2026-09-17', { kind: 'tube', pumpId: rinse?.id ?? '', factor: 1.06 }),
      chapter(
        '2026-11-05',
        { kind: 'hardness', value: '262' },
        note(
          'White film on glasses. Softener out of salt: hardness 262 in the final rinse. Salt filled, regeneration started by the site.',
        ),
      ),
    ],
  },
  {
    seed: 103,
    name: 'Millbrook School kitchen',
    currency: 'USD',
    units: 'us',
    timeZone: 'America/Chicago',
    notes: 'Sign in at the front office.',
    daysPerWeek: '5',
    closures: [
      ['2025-12-22', '2026-01-02', 'Winter break'],
      ['2026-06-15', '2026-08-21', 'Summer break'],
    ],
    water: water('140', '290', 'none'),
    by: 'J. Visit',
    machines: [
      {
        machine: {
          name: 'Door machine',
          class: 'door',
          sanitizing: 'hot-water',
          wash: tank('45', '1'),
          rinse: { kind: 'measured', perRack: entry('0.95', 'gal-us'), spread: '2' },
          boosterVolume: entry('3', 'gal-us'),
          dataPlate: {
            washTemperatureMin: entry('150', 'degF'),
            rinseTemperatureMin: entry('180', 'degF'),
            rinseTemperatureMax: entry('194', 'degF'),
            rinsePressureMin: entry('15', 'psi'),
            rinsePressureMax: entry('25', 'psi'),
          },
          racksPerDay: '160',
          racksSpread: '5',
        },
        pumps: [
          {
            name: 'Rinse aid pump',
            product: PRODUCTS.rinseMedium,
            feeds: 'final-rinse',
            seconds: '9',
            window: window('ppm-vv', '375', '417', '459'),
            kind: 'small screw-set roller pump',
            fittedOn: '2025-08-20',
            truth: [9.7, 10, 4.1, 0.0003, 0.01],
          },
          {
            name: 'Detergent pump',
            product: PRODUCTS.detergentLarge,
            feeds: 'wash-tank',
            seconds: '2.6',
            chargeSeconds: '32',
            window: window('g-per-L-tank', '2', '2.2', '2.4'),
            kind: 'large screw-set roller pump',
            fittedOn: '2025-08-20',
            truth: [148, 146, 58, 0.0003, 0.012],
          },
        ],
      },
    ],
    chapters: ([rinse, detergent]) => [
      chapter('2025-11-18'),
      chapter('2026-01-13'),
      chapter('2026-02-24'),
      chapter(
        '2026-04-07',
        { kind: 'meddled', pumpId: detergent?.id ?? '', factor: 1.52 },
        note('Detergent found half as high again: somebody had turned the screw. Put right in two moves.'),
      ),
      chapter('2026-05-19'),
      chapter(
        '2026-08-25',
        { kind: 'tube', pumpId: rinse?.id ?? '', factor: 1.03 },
        { kind: 'tube', pumpId: detergent?.id ?? '', factor: 1.05 },
        note('Both pump tubes a year old: replaced before term.'),
      ),
      chapter('2026-10-06'),
      chapter('2026-11-10'),
    ],
  },
  {
    seed: 104,
    name: 'Copper Spoon Diner',
    currency: 'USD',
    units: 'us',
    timeZone: 'America/Denver',
    notes: 'Chemical machine. Chlorine and rinse aid stand on separate shelves: keep it so.',
    daysPerWeek: '7',
    closures: [],
    water: water('178', '410', 'none'),
    by: 'J. Visit',
    machines: [
      {
        machine: {
          name: 'Dump-and-fill door machine',
          class: 'door',
          sanitizing: 'chemical',
          wash: { kind: 'dump-and-refill', heel: entry('0.6', 'L'), fill: null },
          rinse: { kind: 'data-plate', perRack: entry('1.18', 'gal-us'), spread: '4' },
          boosterVolume: null,
          dataPlate: {
            washTemperatureMin: entry('120', 'degF'),
            rinseTemperatureMin: entry('120', 'degF'),
            rinseTemperatureMax: null,
            rinsePressureMin: null,
            rinsePressureMax: null,
          },
          racksPerDay: '140',
          racksSpread: '8',
        },
        pumps: [
          {
            name: 'Sanitizer pump',
            product: PRODUCTS.chlorineSanitizer,
            feeds: 'final-rinse',
            seconds: '7.5',
            window: window('mg-per-L-active', '50', '60', '75'),
            kind: 'small screw-set roller pump',
            fittedOn: '2025-12-01',
            truth: [20, 22.6, 8.5, 0.0009, 0.011],
          },
          {
            name: 'Rinse aid pump',
            product: PRODUCTS.rinseMedium,
            feeds: 'final-rinse',
            seconds: '10',
            window: window('ppm-vv', '200', '224', '246'),
            kind: 'small screw-set roller pump',
            fittedOn: '2025-12-01',
            truth: [6.1, 6, 2.2, 0.0004, 0.01],
          },
          {
            name: 'Detergent pump',
            product: PRODUCTS.detergentChlorineSafe,
            feeds: 'wash-tank',
            seconds: '5',
            window: window('g-per-L-tank', '1.7', '1.9', '2.1'),
            kind: 'large screw-set roller pump',
            fittedOn: '2025-12-01',
            truth: [92, 89, 36, 0.0004, 0.012],
          },
        ],
      },
    ],
    chapters: () => [
      chapter('2025-12-10'),
      chapter('2026-01-21'),
      chapter('2026-03-04'),
      chapter('2026-04-15'),
      chapter('2026-05-27'),
      chapter('2026-07-08'),
      chapter('2026-08-19'),
      chapter('2026-09-30'),
      chapter('2026-11-11', note('Strip read 50 at the rack; fresh sanitizer in use.')),
    ],
  },
  {
    seed: 105,
    name: 'Quayside Banqueting',
    currency: 'EUR',
    units: 'metric',
    timeZone: 'Europe/Copenhagen',
    notes: 'Two machines: two-tank conveyor in the wash-up, glasswasher at the bar.',
    daysPerWeek: '4',
    closures: [['2026-07-13', '2026-07-26', 'Works holiday']],
    water: water('54', '260', 'fitted'),
    by: 'R. Field',
    machines: [
      {
        machine: {
          name: 'Conveyor',
          class: 'conveyor-multi-tank',
          sanitizing: 'hot-water',
          wash: tank('45', '2', '85'),
          rinse: { kind: 'data-plate', perRack: entry('2.65', 'L'), spread: '4' },
          boosterVolume: entry('14', 'L'),
          dataPlate: { ...hotWaterPlate, washTemperatureMin: entry('71', 'degC') },
          racksPerDay: '420',
          racksSpread: '8',
        },
        pumps: [
          {
            name: 'Conveyor rinse aid',
            product: PRODUCTS.rinseLarge,
            feeds: 'final-rinse',
            seconds: '3.1',
            window: window('ppm-vv', '245', '272', '299'),
            kind: 'small screw-set roller pump',
            fittedOn: '2025-11-05',
            truth: [13.2, 14, 5.6, 0.0007, 0.009],
          },
          {
            name: 'Conveyor detergent',
            product: PRODUCTS.detergentLarge,
            feeds: 'upstream-tank',
            seconds: '1.2',
            chargeSeconds: '46',
            window: window('g-per-L-tank', '1.85', '2.05', '2.25'),
            kind: 'large screw-set roller pump',
            fittedOn: '2025-11-05',
            truth: [222, 217, 80, 0.0005, 0.012],
          },
        ],
      },
      {
        machine: {
          name: 'Bar glasswasher',
          class: 'undercounter',
          sanitizing: 'hot-water',
          wash: tank('12', '1'),
          rinse: { kind: 'measured', perRack: entry('2.5', 'L'), spread: '2' },
          boosterVolume: entry('4', 'L'),
          dataPlate: hotWaterPlate,
          racksPerDay: '90',
          racksSpread: '8',
        },
        pumps: [
          {
            name: 'Bar rinse aid',
            product: PRODUCTS.rinseMedium,
            feeds: 'final-rinse',
            seconds: '9',
            window: window('ppm-vv', '320', '360', '400'),
            kind: 'small screw-set roller pump',
            fittedOn: '2025-11-05',
            truth: [6.2, 6, 2.4, 0.0005, 0.01],
          },
          {
            name: 'Bar detergent',
            product: PRODUCTS.glassDetergent,
            feeds: 'wash-tank',
            seconds: '4.5',
            chargeSeconds: '22',
            window: window('g-per-L-tank', '1.44', '1.6', '1.76'),
            kind: 'large screw-set roller pump',
            fittedOn: '2025-11-05',
            truth: [46, 48.5, 20, 0.0004, 0.011],
          },
        ],
      },
    ],
    chapters: () => [
      chapter('2025-11-26'),
      chapter('2026-01-15'),
      chapter('2026-02-26'),
      chapter('2026-04-09'),
      chapter('2026-05-21'),
      chapter('2026-07-02'),
      chapter('2026-08-27'),
      chapter(
        '2026-10-08',
        note('Conveyor rinse aid drifts more than the bar: same kind of pump, hotter place.'),
      ),
      chapter('2026-11-12'),
    ],
  },
]

/** Every demo site as a whole site file, the same each time. */
export const demoSites = (): readonly SiteFile[] => PLANS.map(siteOf)

function siteOf(plan: SitePlan): SiteFile {
  const luck = chance(plan.seed)
  const id = luck.uuid()
  const machines: Machine[] = []
  const truths: PumpTruth[] = []
  for (const one of plan.machines) {
    const own = one.pumps.map((pump) => pumpOf(pump, luck))
    machines.push({ id: luck.uuid(), ...one.machine, pumps: own.map((truth) => truth.pump) })
    truths.push(...own)
  }
  const used = new Set(truths.map((truth) => truth.pump.productId))
  const products = Object.values(PRODUCTS).filter((product) => used.has(product.id))
  const instruments = Object.values(INSTRUMENTS)
  const story: Story = {
    machines,
    water: plan.water,
    products,
    instruments,
    truths,
    chapters: plan.chapters(truths.map((truth) => truth.pump)),
    by: plan.by,
    timeZone: plan.timeZone,
    racksPerDay: new Map(machines.map((machine) => [machine.id, Number(machine.racksPerDay)])),
    daysPerWeek: Number(plan.daysPerWeek),
    firstCounter: 10_000 + Math.floor(luck.uniform() * 40_000),
  }
  const told = tell(story, luck)
  return {
    format: 'dosewright-site',
    version: 2,
    site: {
      id,
      name: plan.name,
      currency: plan.currency,
      units: plan.units,
      timeZone: plan.timeZone,
      notes: plan.notes,
      visitEveryDays: '42',
      calendar: {
        daysPerWeek: plan.daysPerWeek,
        closures: plan.closures.map(([from, to, reason]) => ({ id: luck.uuid(), from, to, reason })),
        seasons: [],
        growthPercentPerYear: null,
      },
      water: plan.water,
      machines: told.machines,
      visits: told.visits,
      stock: told.stock,
      snapshots: told.snapshots,
      scenarios: [],
      glassChecks: [],
    },
    products,
    instruments,
  }
}
