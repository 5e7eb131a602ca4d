/**
 * Everything that can stand between an input and a result, as data. The sentence a person reads is made in
 * `messages/sentence.ts`, which does not compile while a code is missing there.
 *
 * `field` names the input at fault as a dotted path in the record, so that a screen can lead to it.
 */
export type Problem =
  // numbers and quantities
  | { readonly code: 'number-missing'; readonly field: string }
  | { readonly code: 'number-unreadable'; readonly field: string; readonly text: string }
  | {
      readonly code: 'number-ambiguous'
      readonly field: string
      readonly text: string
      readonly readings: readonly [string, string]
    }
  | {
      readonly code: 'number-out-of-range'
      readonly field: string
      readonly low: number | null
      readonly high: number | null
      readonly unit: string
    }
  | {
      readonly code: 'unit-unknown'
      readonly field: string
      readonly text: string
      readonly expected: readonly string[]
    }
  // what a result needs and has not got
  | { readonly code: 'missing'; readonly field: string; readonly needed: MissingInput }
  // tests
  | { readonly code: 'no-runs' }
  | { readonly code: 'end-above-start'; readonly field: string }
  | { readonly code: 'tube-wider-than-cylinder'; readonly field: string }
  | { readonly code: 'over-capacity'; readonly field: string; readonly capacity: string }
  | { readonly code: 'too-few-runs'; readonly have: number; readonly need: number }
  // money and stock
  | { readonly code: 'currencies-differ'; readonly first: string; readonly second: string }
  | { readonly code: 'no-price'; readonly product: string }
  // documents and storage
  | { readonly code: 'document-not-json'; readonly place: string }
  | { readonly code: 'document-foreign' }
  | { readonly code: 'document-newer'; readonly version: number; readonly known: number }
  | { readonly code: 'document-malformed'; readonly place: string; readonly reason: string }
  | { readonly code: 'document-too-large'; readonly megabytes: number }
  | { readonly code: 'document-damaged'; readonly document: string; readonly setAside: string | null }
  | { readonly code: 'document-changed-elsewhere'; readonly document: string }
  | { readonly code: 'not-found'; readonly what: string }
  | { readonly code: 'already-there'; readonly what: string }
  | { readonly code: 'not-saved'; readonly reason: string }
  | { readonly code: 'data-folder-in-use'; readonly processId: number; readonly since: string }
  | { readonly code: 'visit-closed'; readonly visitId: string }
  // calls
  | { readonly code: 'unknown-method'; readonly method: string }
  | { readonly code: 'bad-request'; readonly place: string; readonly reason: string }
  | { readonly code: 'internal'; readonly reference: string }
  | { readonly code: 'unavailable'; readonly what: string }
  | { readonly code: 'stopped' }
  | { readonly code: 'host-gone' }
  | { readonly code: 'no-session' }
  // a calculation that cannot say anything, with the reason in the calculation's own closed list
  | { readonly code: 'cannot-compute'; readonly reason: CannotCompute }

/** Inputs a result may lack; each has a name a person knows. */
export type MissingInput =
  | 'product'
  | 'density'
  | 'strength'
  | 'container-size'
  | 'price'
  | 'rinse-volume'
  | 'dose-seconds'
  | 'window'
  | 'racks-per-day'
  | 'tank-volume'
  | 'heel-volume'
  | 'booster-volume'
  | 'instrument'
  | 'graduation'
  | 'bore'
  | 'tube-diameter'
  | 'runs'
  | 'history'
  | 'conductivity-check'
  | 'water'
  | 'target'
  | 'stock-count'

export type CannotCompute =
  | 'no-scatter'
  | 'singular'
  | 'unreachable-precision'
  | 'no-water'
  | 'no-overflow'
  | 'more-arrives'
  | 'outside-valid-range'
  | 'no-spread-in-x'
  | 'zero-flow'
  | 'probe-controlled'
  | 'no-initial-charge'
  | 'not-predicted'
