import type { Entry, EntryOf } from '../units/entry'
import type { Day, Id } from './basics'

export type InstrumentKind =
  | 'cylinder'
  | 'cup'
  | 'scale'
  | 'timer'
  | 'strip'
  | 'titration-kit'
  | 'thermometer'
  | 'pressure-gauge'
  | 'conductivity-meter'
  | 'pH-meter'

/** What a reading was made with, and how far it can be trusted. */
export interface Instrument {
  readonly id: Id
  readonly name: string
  readonly kind: InstrumentKind
  /** what a full cylinder holds, or a scale's capacity */
  readonly capacity: Entry | null
  /** smallest marked or displayed step */
  readonly graduation: Entry | null
  /** half-width of the maker's tolerance, in the unit of the reading */
  readonly tolerance: Entry | null
  /** inside diameter of a cylinder, for the immersed-tube correction */
  readonly bore: EntryOf<'length'> | null
  readonly checkedOn: Day | null
}
