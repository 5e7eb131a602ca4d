import type { Problem } from '../problem'
import type { StockMovement } from '../records'

/** What a list of deliveries can say about each. Date, product and containers are needed. */
export const DELIVERY_FIELDS = ['date', 'product', 'containers', 'size', 'reference'] as const
export type DeliveryField = (typeof DELIVERY_FIELDS)[number]
export const NEEDED_FIELDS: readonly DeliveryField[] = ['date', 'product', 'containers']

/** Which column holds what; null: none does. */
export type DeliveryColumns = { readonly [F in DeliveryField]: number | null }

/** How days are written in a list. `2026-03-09` is read in any. */
export type DateOrder = 'day-first' | 'month-first'

/** A row as it stood in the file, with the number of its first line. */
export interface SourceRow {
  readonly line: number
  readonly cells: readonly string[]
}

export type DeliveryFault =
  | { readonly code: 'empty'; readonly field: DeliveryField }
  | { readonly code: 'day-unreadable'; readonly text: string }
  | { readonly code: 'day-in-future'; readonly text: string }
  | { readonly code: 'day-order-unknown'; readonly text: string }
  | { readonly code: 'product-unknown'; readonly text: string }
  | { readonly code: 'product-ambiguous'; readonly text: string }
  | { readonly code: 'size-unknown'; readonly product: string }
  | { readonly code: 'number'; readonly field: DeliveryField; readonly problem: Problem }
  | { readonly code: 'not-whole'; readonly text: string }
  | { readonly code: 'cell-too-long'; readonly field: DeliveryField; readonly length: number }
  | { readonly code: 'broken-quotes' }

export interface DeliveryProblem {
  readonly line: number
  readonly fault: DeliveryFault
}

export type NewDelivery = Omit<StockMovement, 'id'>

export interface DeliveryReading {
  readonly deliveries: readonly { readonly line: number; readonly delivery: NewDelivery }[]
  readonly problems: readonly DeliveryProblem[]
  /** lines that are booked already, in the record or further up in the list */
  readonly booked: readonly number[]
  /** lines to be booked that say the same as one further up, with no delivery note to tell them apart */
  readonly alike: readonly number[]
}

/** The most stock movements one site file holds. */
export const MOST_MOVEMENTS = 20_000
