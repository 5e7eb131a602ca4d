/** UUID, made by a port. */
export type Id = string
/** Calendar day of the site, `2026-03-09`. */
export type Day = string
/** Instant in UTC, `2026-03-09T14:05:00.000Z`. */
export type Instant = string
/** ISO 4217 code. */
export type CurrencyCode = string
