import type { EntryOf, NumberText } from '../units/entry'
import type { Day, Id } from './basics'
import type { ProductRole } from './product'

export type MachineClass = 'undercounter' | 'door' | 'conveyor-single-tank' | 'conveyor-multi-tank'

/** Fresh final-rinse water of one rack, by the way it is known. `spread` is the standard uncertainty in percent. */
export type RinseWater =
  | { readonly kind: 'measured'; readonly perRack: EntryOf<'volume'>; readonly spread: NumberText | null }
  | {
      readonly kind: 'flow-and-seconds'
      readonly flow: EntryOf<'flow'>
      readonly seconds: EntryOf<'duration'>
      readonly spread: NumberText | null
    }
  | { readonly kind: 'data-plate'; readonly perRack: EntryOf<'volume'>; readonly spread: NumberText | null }

export type Wash =
  | {
      readonly kind: 'tank'
      readonly volume: EntryOf<'volume'> | null
      readonly drainAndFillsPerDay: NumberText | null
      readonly closure: 'continuous' | 'mix-then-overflow' | 'displacement'
      /** water leaving on ware and as vapour, per rack */
      readonly carriedOut: EntryOf<'volume'> | null
      /** a second tank nearer the final rinse: fresh water enters it, and what overflows there feeds this one */
      readonly upstream: UpstreamTank | null
      /** whether a dose comes spread over the rinse, or all at once after it */
      readonly feeding: 'with-rinse' | 'slug'
    }
  | {
      readonly kind: 'dump-and-refill'
      /** what stays in the sump */
      readonly heel: EntryOf<'volume'> | null
      /** what is filled each cycle; null when the final rinse is the next wash */
      readonly fill: EntryOf<'volume'> | null
    }

/** The tank the fresh rinse water reaches first. It is drained, and loses water on ware, as its neighbour does. */
export interface UpstreamTank {
  readonly volume: EntryOf<'volume'> | null
}

/** Limits from the machine's own data plate. */
export interface DataPlate {
  readonly washTemperatureMin: EntryOf<'temperature'> | null
  readonly rinseTemperatureMin: EntryOf<'temperature'> | null
  readonly rinseTemperatureMax: EntryOf<'temperature'> | null
  readonly rinsePressureMin: EntryOf<'pressure'> | null
  readonly rinsePressureMax: EntryOf<'pressure'> | null
}

export type WindowBasis = 'mL-per-rack' | 'ppm-vv' | 'mg-per-L-product' | 'mg-per-L-active' | 'g-per-L-tank'

/** What the dose should be. Low, target and high are on one basis, low <= target <= high. */
export interface TargetWindow {
  readonly basis: WindowBasis
  readonly low: NumberText
  readonly target: NumberText
  readonly high: NumberText
}

export interface PumpTube {
  readonly fittedOn: Day | null
  readonly outsideDiameter: EntryOf<'length'> | null
  readonly bore: EntryOf<'length'> | null
  /** container to injection point */
  readonly lineLength: EntryOf<'length'> | null
  readonly replaceAfterDays: NumberText | null
}

export interface Pump {
  readonly id: Id
  readonly name: string
  readonly role: ProductRole
  readonly productId: Id | null
  /** `upstream-tank`: the second tank of a machine that has one */
  readonly feeds: 'final-rinse' | 'wash-tank' | 'upstream-tank'
  /** how long the pump runs for one rack */
  readonly doseSeconds: EntryOf<'duration'> | null
  readonly doseSecondsSpread: NumberText | null
  /** how long it runs after a fresh fill; the tank target itself stands in `window` */
  readonly initialChargeSeconds: EntryOf<'duration'> | null
  readonly control: 'time' | 'probe'
  readonly setBy: 'screw' | 'percent' | 'seconds'
  /** the rep's own word for this kind of pump; pumps of one kind teach each other their gain */
  readonly kind: string
  readonly rollers: { readonly perMinute: NumberText; readonly count: NumberText } | null
  readonly tube: PumpTube
  /** eighths of a turn still free in each direction from today's position, where somebody found out */
  readonly screwStops: { readonly up: NumberText | null; readonly down: NumberText | null }
  readonly window: TargetWindow | null
}

export interface Machine {
  readonly id: Id
  readonly name: string
  readonly class: MachineClass
  readonly sanitizing: 'hot-water' | 'chemical'
  readonly wash: Wash
  readonly rinse: RinseWater | null
  readonly boosterVolume: EntryOf<'volume'> | null
  readonly dataPlate: DataPlate
  readonly racksPerDay: NumberText | null
  /** standard uncertainty of racks per day, percent */
  readonly racksSpread: NumberText | null
  readonly pumps: readonly Pump[]
}
