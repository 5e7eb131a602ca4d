import type { Entry, EntryOf, NumberText } from '../units/entry'
import type { Day, Id, Instant } from './basics'

export type TestMethod = 'draw-down' | 'catch' | 'weighed'

/**
 * One timed run. Draw-down: levels before and after. Catch: `end` is the volume caught, `start` null.
 * Weighed: masses of the container before and after.
 */
export interface Run {
  readonly id: Id
  readonly start: Entry | null
  readonly end: Entry | null
  readonly seconds: EntryOf<'duration'> | null
  /** why this run does not count; null when it does */
  readonly excluded: string | null
}

/** A series of runs at one screw position. */
export interface Test {
  readonly kind: 'test'
  readonly id: Id
  readonly at: Instant
  readonly method: TestMethod
  readonly instrumentId: Id | null
  /** whether the pick-up tube stood in the cylinder at both readings (draw-down) */
  readonly tubeImmersed: boolean
  readonly primed: boolean
  readonly productTemperature: EntryOf<'temperature'> | null
  readonly runs: readonly Run[]
}

/** What was really turned, in eighths, clockwise positive, net of any backing off. */
export interface Turn {
  readonly kind: 'turn'
  readonly id: Id
  readonly at: Instant
  readonly eighths: number
}

export interface TubeFitted {
  readonly kind: 'tube-fitted'
  readonly id: Id
  readonly at: Instant
}

export interface ContainerChanged {
  readonly kind: 'container-changed'
  readonly id: Id
  readonly at: Instant
}

/** The rep met an end stop while turning in this direction. */
export interface EndStop {
  readonly kind: 'end-stop'
  readonly id: Id
  readonly at: Instant
  readonly direction: 'up' | 'down'
}

/** What happened at a pump, in order. As-found is the first test, as-left the last. */
export type Step = Test | Turn | TubeFitted | ContainerChanged | EndStop

export type VerificationMethod =
  | 'strip'
  | 'chlorine-titration'
  | 'chlorine-drops'
  | 'alkalinity-titration'
  | 'alkalinity-drops'
  | 'hardness-titration'
  | 'hardness-drops'
  | 'conductivity'

/** A chemical check of the strength. `factor` is what one mL or one drop of the kit stands for, from its leaflet. */
export interface Verification {
  readonly id: Id
  readonly at: Instant
  readonly method: VerificationMethod
  readonly where: 'rinse-water' | 'ware' | 'wash-tank'
  readonly instrumentId: Id | null
  /** mg/L for a strip, mL for a titration, drops for a drop count, µS/cm for conductivity */
  readonly reading: NumberText | null
  /** step between two pads of a strip, or resolution of the reading */
  readonly step: NumberText | null
  readonly factor: NumberText | null
  readonly blank: NumberText | null
}

export interface PumpWork {
  readonly pumpId: Id
  readonly steps: readonly Step[]
  readonly verifications: readonly Verification[]
}

export type SiteCheck =
  | 'supply-pressure'
  | 'rinse-pressure'
  | 'rinse-temperature'
  | 'wash-temperature'
  | 'drain-air-gap'
  | 'drain-loop'
  | 'containers-low'
  | 'pick-up-and-cap'
  | 'primed-after-change'
  | 'tubes-as-installed'
  | 'high-limit-thermostats'
  | 'power-to-nameplate'
  | 'rack-signal'
  | 'tank-level'
  | 'water-recorded'
  | 'jets-and-screens'
  | 'proof-of-delivery'
  | 'label-matches-record'

export interface CheckAnswer {
  readonly machineId: Id
  readonly check: SiteCheck
  readonly answer: 'ok' | 'not-ok' | 'not-checked'
  readonly value: Entry | null
  readonly note: string
}

export type ReadingKind =
  | 'rack-counter'
  | 'rinse-temperature'
  | 'wash-temperature'
  | 'ware-temperature'
  | 'rinse-pressure'
  | 'supply-pressure'
  | 'rinse-volume'
  | 'hardness-supply'
  | 'hardness-rinse'
  | 'solids-rinse'
  | 'conductivity-rinse'
  | 'pH-rinse'
  | 'racks-since-fill'

export interface Reading {
  readonly id: Id
  readonly machineId: Id
  readonly kind: ReadingKind
  readonly at: Instant
  /** a counter's value has unit null */
  readonly value: Entry | null
  readonly count: NumberText | null
}

export interface CautionAcknowledged {
  readonly caution: string
  readonly productId: Id | null
  readonly at: Instant
}

export interface Advice {
  readonly id: Id
  readonly to: 'operator' | 'rep' | 'technician'
  readonly text: string
}

export interface Closing {
  readonly at: Instant
  readonly nextVisitOn: Day | null
  readonly customerName: string
  readonly signedBy: string
}

/** A correction to a closed visit. The visit itself stays as it was. */
export interface Amendment {
  readonly id: Id
  readonly at: Instant
  readonly by: string
  readonly reason: string
  readonly text: string
}

export interface Visit {
  readonly id: Id
  readonly startedAt: Instant
  readonly by: string
  readonly checks: readonly CheckAnswer[]
  readonly readings: readonly Reading[]
  readonly work: readonly PumpWork[]
  readonly cautions: readonly CautionAcknowledged[]
  readonly advice: readonly Advice[]
  readonly notes: string
  readonly closing: Closing | null
  /** the set-up this visit was closed with; null while it is open and the live set-up counts */
  readonly setupId: Id | null
  readonly amendments: readonly Amendment[]
}
