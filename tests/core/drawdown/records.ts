import type { TestConditions } from '#core/drawdown/types'
import type { Entry, Instrument, Product, PumpTube, Run, Test, TestMethod } from '#core/records/index'
import type { EntryOf } from '#core/units/entry'

export const mL = (value: number | string) => ({ value: String(value), unit: 'mL' as const })
export const s = (value: number | string) => ({ value: String(value), unit: 's' as const })
export const g = (value: number | string) => ({ value: String(value), unit: 'g' as const })
export const mm = (value: number | string): EntryOf<'length'> => ({ value: String(value), unit: 'mm' })

export const cylinder = (over: Partial<Instrument> = {}): Instrument => ({
  id: 'cylinder',
  name: '50 mL cylinder',
  kind: 'cylinder',
  capacity: mL(50),
  graduation: mL(1),
  tolerance: mL('0.50'),
  bore: mm(23),
  checkedOn: null,
  ...over,
})

export const scale = (over: Partial<Instrument> = {}): Instrument =>
  cylinder({
    id: 'scale',
    name: 'Scale',
    kind: 'scale',
    capacity: g(5000),
    graduation: g('0.1'),
    tolerance: g('0.2'),
    bore: null,
    ...over,
  })

export const product = (over: Partial<Product> = {}): Product => ({
  id: 'product',
  name: 'Rinse aid',
  role: 'rinse-aid',
  density: { value: '1.02', unit: 'g/mL' },
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

export const tube = (over: Partial<PumpTube> = {}): PumpTube => ({
  fittedOn: null,
  outsideDiameter: mm('6.35'),
  bore: null,
  lineLength: null,
  replaceAfterDays: null,
  ...over,
})

export const conditions = (over: Partial<TestConditions> = {}): TestConditions => ({
  instrument: cylinder(),
  product: product(),
  tube: tube(),
  rollers: null,
  ...over,
})

export const run = (
  id: string,
  start: Entry | null,
  end: Entry | null,
  seconds: number | string = 60,
): Run => ({
  id,
  start,
  end,
  seconds: s(seconds),
  excluded: null,
})

export const series = (method: TestMethod, runs: readonly Run[], over: Partial<Test> = {}): Test => ({
  kind: 'test',
  id: 'test',
  at: '2026-03-09T14:05:00.000Z',
  method,
  instrumentId: 'cylinder',
  tubeImmersed: method === 'draw-down',
  primed: true,
  productTemperature: null,
  runs,
  ...over,
})

/** A series caught in an empty cup: volumes in mL, all of one length. */
export const caught = (
  volumes: readonly (number | string)[],
  seconds: number | string = 60,
  over: Partial<Test> = {},
): Test =>
  series(
    'catch',
    volumes.map((volume, i) => run(`run-${i + 1}`, null, mL(volume), seconds)),
    over,
  )
