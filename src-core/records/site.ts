import type { Entry, EntryOf, NumberText } from '../units/entry'
import type { CurrencyCode, Day, Id, Instant } from './basics'
import type { Instrument } from './instrument'
import type { Machine } from './machine'
import type { Product } from './product'
import type { Visit } from './visit'

export interface Closure {
  readonly id: Id
  readonly from: Day
  /** last closed day */
  readonly to: Day
  readonly reason: string
}

/** Busier or quieter months, as a percentage of the stated racks per day. */
export interface Season {
  readonly month: number
  readonly percent: NumberText
}

export interface SiteCalendar {
  readonly daysPerWeek: NumberText
  readonly closures: readonly Closure[]
  readonly seasons: readonly Season[]
  readonly growthPercentPerYear: NumberText | null
}

export interface Water {
  readonly hardness: EntryOf<'hardness'> | null
  readonly solids: EntryOf<'solids'> | null
  readonly conductivity: EntryOf<'conductivity'> | null
  readonly alkalinity: EntryOf<'hardness'> | null
  readonly calcium: EntryOf<'hardness'> | null
  readonly pH: NumberText | null
  readonly temperature: EntryOf<'temperature'> | null
  readonly softener: 'none' | 'fitted' | 'unknown'
}

/** Stock of one product at one moment, or what came in. Full containers, and what a part container holds. */
export interface StockMovement {
  readonly id: Id
  readonly on: Day
  readonly productId: Id
  readonly kind: 'count' | 'delivery'
  readonly fullContainers: NumberText
  readonly containerSize: EntryOf<'volume'>
  /** a volume, or a mass to be taken with the tare and the density */
  readonly part: Entry | null
  readonly tare: EntryOf<'mass'> | null
  readonly reference: string
  readonly visitId: Id | null
}

/**
 * The set-up as it was when a visit closed: what its results are computed with for ever. Kept once for all visits that
 * share it.
 */
export interface SetupSnapshot {
  readonly id: Id
  readonly at: Instant
  readonly machines: readonly Machine[]
  readonly water: Water
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
}

/** One named what-if. Every field null means "as today". */
export interface Scenario {
  readonly id: Id
  readonly name: string
  readonly racksPercent: NumberText | null
  readonly rinseVolumePercent: NumberText | null
  readonly changes: readonly {
    readonly pumpId: Id
    readonly productId: Id | null
    readonly dosePercent: NumberText | null
    readonly pricePerContainer: NumberText | null
    readonly containerSize: EntryOf<'volume'> | null
    readonly strengthPercent: NumberText | null
  }[]
}

export interface GlassAnswer {
  readonly evidence: string
  readonly answer: 'yes' | 'no' | 'unknown'
}

/** One check by the operator, and what it turned out to be when the rep confirmed it. */
export interface GlassCheck {
  readonly id: Id
  readonly at: Instant
  readonly machineId: Id | null
  readonly seen: readonly string[]
  readonly ware: readonly ('glass' | 'cutlery' | 'plates')[]
  readonly spread: 'all' | 'one-zone' | 'unknown'
  readonly since: 'new' | 'weeks' | 'unknown'
  readonly answers: readonly GlassAnswer[]
  readonly confirmedCause: string | null
  readonly confirmedAt: Instant | null
}

/**
 * How the machines of a site came to stand as they do, so that versions of it brought together keep an order somebody
 * set: what a move last made of it, and when each later one was added. Missing until a machine is moved or added.
 */
export interface MachineOrder {
  /** null: nobody moved one; the order is the one they were found in */
  readonly movedAt: Instant | null
  readonly ids: readonly Id[]
  readonly added: readonly { readonly id: Id; readonly at: Instant }[]
}

export interface Site {
  readonly id: Id
  readonly name: string
  readonly currency: CurrencyCode
  readonly units: 'metric' | 'us' | 'imperial'
  readonly timeZone: string
  readonly notes: string
  readonly visitEveryDays: NumberText | null
  readonly calendar: SiteCalendar
  readonly water: Water
  readonly machines: readonly Machine[]
  readonly visits: readonly Visit[]
  readonly stock: readonly StockMovement[]
  readonly snapshots: readonly SetupSnapshot[]
  readonly scenarios: readonly Scenario[]
  readonly glassChecks: readonly GlassCheck[]
  readonly machineOrder?: MachineOrder
}
