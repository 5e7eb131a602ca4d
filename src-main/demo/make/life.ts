import { addDays } from '#core/units/days'
import { entry } from '#core/units/entry'
import type {
  CheckAnswer,
  Instrument,
  Machine,
  Product,
  Pump,
  PumpWork,
  Reading,
  Run,
  SetupSnapshot,
  SiteCheck,
  Step,
  StockMovement,
  Test,
  Verification,
  Visit,
  Water,
} from '#core/records/index'
import type { Chance } from './chance'
import { cylinderFor } from './library'

/** What a pump is really like, which no screen ever sees: the readings are made from it. */
export interface PumpTruth {
  readonly pump: Pump
  /** mL/min at the first visit, as found */
  readonly flow: number
  /** mL/min per turn */
  readonly gain: number
  /** fraction lost per day; negative when it gains */
  readonly wearPerDay: number
  /** fraction, run to run */
  readonly scatter: number
  /** mL/min wanted */
  readonly wanted: number
}

export type Happening =
  | { readonly kind: 'tube'; readonly pumpId: string; readonly factor: number }
  | { readonly kind: 'meddled'; readonly pumpId: string; readonly factor: number }
  | { readonly kind: 'hardness'; readonly value: string }
  | { readonly kind: 'note'; readonly text: string }

export interface Chapter {
  readonly day: string
  readonly happenings: readonly Happening[]
}

export interface Story {
  readonly machines: readonly Machine[]
  readonly water: Water
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  readonly truths: readonly PumpTruth[]
  readonly chapters: readonly Chapter[]
  readonly by: string
  readonly timeZone: string
  readonly racksPerDay: ReadonlyMap<string, number>
  readonly daysPerWeek: number
  readonly firstCounter: number
}

/** Flow error beyond which the rep of the story reaches for the screw. */
const WORTH_A_TURN = 0.06

export interface Told {
  /** as they stand after the last visit */
  readonly machines: readonly Machine[]
  readonly visits: readonly Visit[]
  readonly snapshots: readonly SetupSnapshot[]
  readonly stock: readonly StockMovement[]
}

/** Plays a site's history: what was found, read, turned and left at every visit, and what was delivered between. */
export function tell(story: Story, luck: Chance): Told {
  const flows = new Map(story.truths.map((truth) => [truth.pump.id, truth.flow]))
  const visits: Visit[] = []
  const snapshots: SetupSnapshot[] = []
  let machines = story.machines
  const stock: StockMovement[] = []
  let before: string | null = null
  const counters = new Map(story.machines.map((machine) => [machine.id, story.firstCounter]))
  let hardness = story.water.hardness?.value ?? '120'
  for (const chapter of story.chapters) {
    const days = before === null ? 0 : numberOfDays(before, chapter.day)
    const left = new Map(flows)
    for (const truth of story.truths)
      flows.set(truth.pump.id, (flows.get(truth.pump.id) ?? 0) * Math.exp(-truth.wearPerDay * days))
    for (const one of chapter.happenings) {
      if (one.kind === 'meddled') flows.set(one.pumpId, (flows.get(one.pumpId) ?? 0) * one.factor)
      if (one.kind === 'hardness') hardness = one.value
    }
    // between two visits a pump gave, on average, what lies between as left and as found
    const between = new Map([...flows].map(([id, found]) => [id, (found + (left.get(id) ?? found)) / 2]))
    const busy = 1 + 0.04 * luck.normal()
    for (const [machineId, racks] of story.racksPerDay)
      counters.set(
        machineId,
        (counters.get(machineId) ?? story.firstCounter) +
          Math.round(racks * days * (story.daysPerWeek / 7) * busy),
      )
    const clock = timeOf(chapter.day, story.timeZone)
    const fitted = chapter.happenings.flatMap((one) => (one.kind === 'tube' ? [one.pumpId] : []))
    if (snapshots.length === 0 || fitted.length > 0) {
      machines = withNewTubes(machines, fitted, chapter.day)
      snapshots.push({
        id: luck.uuid(),
        at: clock(40),
        machines,
        water: story.water,
        products: story.products,
        instruments: story.instruments,
      })
    }
    const setupId = snapshots.at(-1)?.id ?? null
    const work = story.truths.map((truth) => visitPump(truth, flows, chapter, clock, luck))
    const id = luck.uuid()
    visits.push({
      id,
      startedAt: clock(0),
      by: story.by,
      checks: story.machines.flatMap((machine) => answers(machine.id)),
      readings: story.machines.flatMap((machine) =>
        readings(machine, counters.get(machine.id) ?? story.firstCounter, hardness, clock, luck),
      ),
      work,
      cautions: [
        { caution: 'protect-yourself', productId: null, at: clock(1) },
        { caution: 'scald', productId: null, at: clock(3) },
        ...story.products.map((one) => ({ caution: 'read-label', productId: one.id, at: clock(2) })),
        ...story.products
          .filter((one) => one.hazards.includes('corrosive'))
          .map((one) => ({ caution: 'corrosive', productId: one.id, at: clock(2) })),
      ],
      advice: [],
      notes: chapter.happenings.flatMap((one) => (one.kind === 'note' ? [one.text] : [])).join(' '),
      closing: {
        at: clock(40),
        nextVisitOn: addDays(chapter.day, 42),
        customerName: 'Shift manager',
        signedBy: story.by,
      },
      setupId,
      amendments: [],
    })
    stock.push(...restock(story, between, busy, chapter.day, before, days, id, luck, stock))
    before = chapter.day
  }
  return { machines, visits, snapshots, stock }
}

const withNewTubes = (
  machines: readonly Machine[],
  pumpIds: readonly string[],
  day: string,
): readonly Machine[] =>
  machines.map((machine) => ({
    ...machine,
    pumps: machine.pumps.map((pump) =>
      pumpIds.includes(pump.id) ? { ...pump, tube: { ...pump.tube, fittedOn: day } } : pump,
    ),
  }))

const numberOfDays = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000)

/** Minutes after the rep came: in the morning by the clock of the site. */
const timeOf =
  (day: string, timeZone: string) =>
  (minutes: number): string =>
    new Date(
      Date.parse(`${day}T${timeZone.startsWith('America/') ? '15:10' : '08:10'}:00.000Z`) + minutes * 60_000,
    ).toISOString()

function visitPump(
  truth: PumpTruth,
  flows: Map<string, number>,
  chapter: Chapter,
  clock: (minutes: number) => string,
  luck: Chance,
): PumpWork {
  const steps: Step[] = []
  const { pump } = truth
  let minute = 5
  const test = (): Test => {
    minute += 5
    return series(truth, flows.get(pump.id) ?? 0, clock(minute), luck)
  }
  for (const one of chapter.happenings)
    if (one.kind === 'tube' && one.pumpId === pump.id) {
      steps.push(test(), { kind: 'tube-fitted', id: luck.uuid(), at: clock(minute + 1) })
      flows.set(pump.id, (flows.get(pump.id) ?? 0) * one.factor)
    }
  steps.push(test())
  for (let turns = 0; turns < 3; turns += 1) {
    const flow = flows.get(pump.id) ?? 0
    const off = (truth.wanted - flow) / truth.wanted
    if (Math.abs(off) < WORTH_A_TURN) break
    const eighths = Math.round((8 * (truth.wanted - flow)) / (truth.gain * (1 + 0.12 * luck.normal())))
    if (eighths === 0) break
    const capped = Math.max(-4, Math.min(4, eighths))
    steps.push({ kind: 'turn', id: luck.uuid(), at: clock(minute + 2), eighths: capped })
    flows.set(pump.id, flow + (truth.gain * capped) / 8)
    steps.push(test())
  }
  const strip = pump.role === 'sanitizer' ? [stripReading(truth, flows, clock(minute + 3), luck)] : []
  return { pumpId: pump.id, steps, verifications: strip }
}

/** Trade percent x 10 x dose over litres, read on a strip with 25 mg/L pads: the story's sanitizer only. */
function stripReading(
  truth: PumpTruth,
  flows: ReadonlyMap<string, number>,
  at: string,
  luck: Chance,
): Verification {
  const perRack = ((flows.get(truth.pump.id) ?? 0) * Number(truth.pump.doseSeconds?.value ?? '0')) / 60
  const strength = (10 * 9.5 * perRack) / 4.467
  return {
    id: luck.uuid(),
    at,
    method: 'strip',
    where: 'rinse-water',
    instrumentId: null,
    reading: String(25 * Math.round(strength / 25)),
    step: '25',
    factor: null,
    blank: null,
  }
}

const immersed = (instrument: Instrument): number => {
  const ratio = 6.35 / Number(instrument.bore?.value ?? '100')
  return 1 - ratio * ratio
}

function series(truth: PumpTruth, flow: number, at: string, luck: Chance): Test {
  const instrument = cylinderFor(flow * 1.05)
  const half = Number(instrument.graduation?.value ?? '1') / 2
  const full = Number(instrument.capacity?.value ?? '100')
  const runs = Array.from({ length: 3 }, (): Run => {
    const seconds = 60 + 0.08 * luck.normal()
    const drawn = ((flow * (1 + truth.scatter * luck.normal())) / 60) * seconds
    const shown = drawn / immersed(instrument)
    const end = half * Math.round((full - shown) / half)
    return {
      id: luck.uuid(),
      start: entry(full.toFixed(1), 'mL'),
      end: entry(end.toFixed(1), 'mL'),
      seconds: entry(seconds.toFixed(2), 's'),
      excluded: null,
    }
  })
  return {
    kind: 'test',
    id: luck.uuid(),
    at,
    method: 'draw-down',
    instrumentId: instrument.id,
    tubeImmersed: true,
    primed: true,
    productTemperature: null,
    runs,
  }
}

const ROUTINE: readonly SiteCheck[] = [
  'rinse-pressure',
  'rinse-temperature',
  'wash-temperature',
  'drain-air-gap',
  'drain-loop',
  'containers-low',
  'pick-up-and-cap',
  'primed-after-change',
  'tubes-as-installed',
  'rack-signal',
  'tank-level',
  'water-recorded',
  'jets-and-screens',
  'proof-of-delivery',
  'label-matches-record',
  'supply-pressure',
]

const answers = (machineId: string): readonly CheckAnswer[] =>
  ROUTINE.map((check) => ({ machineId, check, answer: 'ok', value: null, note: '' }))

function readings(
  machine: Machine,
  counter: number,
  hardness: string,
  clock: (minutes: number) => string,
  luck: Chance,
): readonly Reading[] {
  const hot = machine.sanitizing === 'hot-water'
  const near = (value: number, spread: number): string => (value + spread * luck.normal()).toFixed(1)
  const reading = (kind: Reading['kind'], value: Reading['value'], count: string | null = null): Reading => ({
    id: luck.uuid(),
    machineId: machine.id,
    kind,
    at: clock(3),
    value,
    count,
  })
  return [
    reading('rack-counter', null, String(counter)),
    reading('wash-temperature', entry(near(hot ? 67 : 54, 0.7), 'degC')),
    reading('rinse-temperature', entry(near(hot ? 84 : 55, 0.6), 'degC')),
    reading('rinse-pressure', entry(near(138, 4), 'kPa')),
    reading('hardness-rinse', entry(hardness, 'mg/L-CaCO3')),
  ]
}

/** Litres a pump really used over some days: racks, and fresh fills of its tank. */
function usedBy(truth: PumpTruth, story: Story, flows: ReadonlyMap<string, number>, days: number): number {
  const { pump } = truth
  const machine = story.machines.find((one) => one.pumps.some((other) => other.id === pump.id))
  const open = days * (story.daysPerWeek / 7)
  const racks = (story.racksPerDay.get(machine?.id ?? '') ?? 0) * open
  const fills = machine?.wash.kind === 'tank' ? Number(machine.wash.drainAndFillsPerDay ?? '0') * open : 0
  const perSecond = (flows.get(pump.id) ?? 0) / 60
  const seconds =
    racks * Number(pump.doseSeconds?.value ?? '0') + fills * Number(pump.initialChargeSeconds?.value ?? '0')
  return (perSecond * seconds) / 1000
}

/** A count at every visit, and deliveries that keep the shelf between one and three containers. */
function restock(
  story: Story,
  flows: ReadonlyMap<string, number>,
  busy: number,
  day: string,
  before: string | null,
  days: number,
  visitId: string,
  luck: Chance,
  earlier: readonly StockMovement[],
): readonly StockMovement[] {
  const movements: StockMovement[] = []
  for (const product of story.products) {
    const fed = story.truths.filter((truth) => truth.pump.productId === product.id)
    const size = Number(product.containerSize?.value ?? '0')
    if (fed.length === 0 || product.containerSize === null || size === 0) continue
    const used =
      fed.reduce((sum, truth) => sum + usedBy(truth, story, flows, days), 0) *
      busy *
      (1 + 0.02 * luck.normal())
    const last = earlier.findLast((one) => one.productId === product.id && one.kind === 'count')
    const held =
      last === undefined ? size * 2.4 : Number(last.fullContainers) * size + Number(last.part?.value ?? '0')
    const short = used + size - held
    const delivered = before === null ? 0 : Math.max(0, Math.ceil(short / size))
    const base = { productId: product.id, containerSize: product.containerSize, tare: null }
    if (delivered > 0 && before !== null)
      movements.push({
        id: luck.uuid(),
        on: addDays(before, Math.max(1, Math.floor(days / 2))),
        ...base,
        kind: 'delivery',
        fullContainers: String(delivered),
        part: null,
        reference: `DN-${String(1000 + Math.floor(luck.uniform() * 9000))}`,
        visitId: null,
      })
    const left = Math.max(0, held + delivered * size - used)
    movements.push({
      id: luck.uuid(),
      on: day,
      ...base,
      kind: 'count',
      fullContainers: String(Math.floor(left / size)),
      part: entry((left - Math.floor(left / size) * size).toFixed(1), 'L'),
      reference: '',
      visitId,
    })
  }
  return movements
}
