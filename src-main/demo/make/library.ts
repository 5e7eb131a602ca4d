import type { Instrument, Product } from '#core/records/index'
import { entry } from '#core/units/entry'

/** Invented products. Strengths, densities and prices are plausible, and no label of any real product. */
const product = (id: string, name: string, rest: Omit<Product, 'id' | 'name'>): Product => ({
  id,
  name,
  ...rest,
})

const RINSE_AID = {
  role: 'rinse-aid',
  density: entry('1.02', 'g/mL'),
  strength: { kind: 'none' },
  hazards: ['acid', 'irritant'],
  labelLimits: null,
  safetySheet: 'Blue folder on the chemical shelf',
  deliveredOn: null,
  shelfLifeDays: '730',
  leadTimeDays: '4',
} as const

const DETERGENT = {
  role: 'detergent',
  strength: { kind: 'none' },
  hazards: ['corrosive', 'alkaline'],
  labelLimits: null,
  safetySheet: 'Blue folder on the chemical shelf',
  deliveredOn: null,
  shelfLifeDays: '730',
  leadTimeDays: '4',
} as const

const prices = (
  containerSize: Product['containerSize'],
  rows: readonly (readonly [string, string, string])[],
): Product['prices'] =>
  containerSize === null
    ? []
    : rows.map(([from, currency, price]) => ({ from, currency, price, containerSize }))

const five = entry('5', 'L')
const ten = entry('10', 'L')
const twenty = entry('20', 'L')

export const PRODUCTS = {
  rinseSmall: product('0b9a51f2-6d0e-4c1b-a7d4-2f51c7a0e101', 'Rinse aid, 5 L', {
    ...RINSE_AID,
    containerSize: five,
    prices: prices(five, [
      ['2025-01-01', 'EUR', '34.50'],
      ['2026-04-01', 'EUR', '36.00'],
    ]),
  }),
  rinseMedium: product('0b9a51f2-6d0e-4c1b-a7d4-2f51c7a0e102', 'Rinse aid, 10 L', {
    ...RINSE_AID,
    containerSize: ten,
    prices: prices(ten, [
      ['2025-01-01', 'EUR', '61.00'],
      ['2026-02-01', 'EUR', '64.00'],
      ['2025-01-01', 'USD', '66.00'],
    ]),
  }),
  rinseLarge: product('0b9a51f2-6d0e-4c1b-a7d4-2f51c7a0e103', 'Rinse aid, 20 L', {
    ...RINSE_AID,
    containerSize: twenty,
    prices: prices(twenty, [['2025-01-01', 'EUR', '118.00']]),
  }),
  glassDetergent: product('0b9a51f2-6d0e-4c1b-a7d4-2f51c7a0e104', 'Glass detergent, 10 L', {
    ...DETERGENT,
    density: entry('1.10', 'g/mL'),
    containerSize: ten,
    prices: prices(ten, [['2025-01-01', 'EUR', '46.00']]),
  }),
  detergentSmall: product('0b9a51f2-6d0e-4c1b-a7d4-2f51c7a0e105', 'Dish detergent, 5 L', {
    ...DETERGENT,
    density: entry('1.20', 'g/mL'),
    containerSize: five,
    prices: prices(five, [
      ['2025-01-01', 'EUR', '19.50'],
      ['2026-04-01', 'EUR', '20.50'],
    ]),
  }),
  detergentLarge: product('0b9a51f2-6d0e-4c1b-a7d4-2f51c7a0e106', 'Dish detergent, 20 L', {
    ...DETERGENT,
    density: entry('1.25', 'g/mL'),
    containerSize: twenty,
    prices: prices(twenty, [
      ['2025-01-01', 'EUR', '70.00'],
      ['2026-02-01', 'EUR', '72.00'],
      ['2025-01-01', 'USD', '76.00'],
    ]),
  }),
  detergentChlorineSafe: product('0b9a51f2-6d0e-4c1b-a7d4-2f51c7a0e107', 'Low-temperature detergent, 20 L', {
    ...DETERGENT,
    density: entry('1.15', 'g/mL'),
    containerSize: twenty,
    prices: prices(twenty, [['2025-01-01', 'USD', '70.00']]),
  }),
  chlorineSanitizer: product('0b9a51f2-6d0e-4c1b-a7d4-2f51c7a0e108', 'Chlorine sanitizer, 20 L', {
    role: 'sanitizer',
    density: entry('1.15', 'g/mL'),
    strength: { kind: 'trade-percent', percent: '9.5', measuredOn: '2026-11-02' },
    hazards: ['corrosive', 'chlorine'],
    containerSize: twenty,
    prices: prices(twenty, [['2025-01-01', 'USD', '42.00']]),
    labelLimits: { basis: 'mg-per-L-active', low: '50', high: '100' },
    safetySheet: 'Binder beside the hand sink',
    deliveredOn: '2026-10-28',
    shelfLifeDays: '60',
    leadTimeDays: '3',
  }),
} as const

const cylinder = (
  id: string,
  name: string,
  size: string,
  graduation: string,
  tolerance: string,
  bore: string,
): Instrument => ({
  id,
  name,
  kind: 'cylinder',
  capacity: entry(size, 'mL'),
  graduation: entry(graduation, 'mL'),
  tolerance: entry(tolerance, 'mL'),
  bore: entry(bore, 'mm'),
  checkedOn: '2026-01-12',
})

/** Class B tolerances and largest bores: ASTM E1272 Table 1. */
export const INSTRUMENTS = {
  ten: cylinder(
    '7c4d2e10-90ab-4a3e-a5c6-13f0a8d3b201',
    '10 mL cylinder, class B',
    '10',
    '0.2',
    '0.20',
    '15.2',
  ),
  twentyFive: cylinder(
    '7c4d2e10-90ab-4a3e-a5c6-13f0a8d3b202',
    '25 mL cylinder, class B',
    '25',
    '0.5',
    '0.34',
    '18.5',
  ),
  fifty: cylinder(
    '7c4d2e10-90ab-4a3e-a5c6-13f0a8d3b203',
    '50 mL cylinder, class B',
    '50',
    '1',
    '0.50',
    '23.0',
  ),
  hundred: cylinder(
    '7c4d2e10-90ab-4a3e-a5c6-13f0a8d3b204',
    '100 mL cylinder, class B',
    '100',
    '1',
    '1.0',
    '29.6',
  ),
  twoFifty: cylinder(
    '7c4d2e10-90ab-4a3e-a5c6-13f0a8d3b205',
    '250 mL cylinder, class B',
    '250',
    '2',
    '2.0',
    '42.4',
  ),
  scale: {
    id: '7c4d2e10-90ab-4a3e-a5c6-13f0a8d3b206',
    name: 'Field scale, 3 kg',
    kind: 'scale',
    capacity: entry('3', 'kg'),
    graduation: entry('0.1', 'g'),
    tolerance: entry('0.2', 'g'),
    bore: null,
    checkedOn: '2026-01-12',
  },
  strips: {
    id: '7c4d2e10-90ab-4a3e-a5c6-13f0a8d3b207',
    name: 'Chlorine strips, 0 to 200 mg/L',
    kind: 'strip',
    capacity: null,
    graduation: entry('25', 'mg/L-active'),
    tolerance: null,
    bore: null,
    checkedOn: null,
  },
  timer: {
    id: '7c4d2e10-90ab-4a3e-a5c6-13f0a8d3b208',
    name: 'Stopwatch',
    kind: 'timer',
    capacity: null,
    graduation: entry('0.01', 's'),
    tolerance: null,
    bore: null,
    checkedOn: null,
  },
} as const satisfies Record<string, Instrument>

/** The smallest cylinder that holds a volume with a little room, in mL. */
export function cylinderFor(volume: number): Instrument {
  const { ten: c10, twentyFive, fifty, hundred, twoFifty } = INSTRUMENTS
  const found = [c10, twentyFive, fifty, hundred, twoFifty].find(
    (one) => Number(one.capacity?.value) >= volume * 1.1,
  )
  return found ?? twoFifty
}
