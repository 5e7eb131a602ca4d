/**
 * Calendar days without a clock or a time zone. A day is `2026-03-09`; an instant is UTC. Proleptic Gregorian calendar,
 * years 1 to 9999.
 */

const DAY = /^(\d{4})-(\d{2})-(\d{2})/u

/** Days since 1970-01-01 of a day or of the UTC day of an instant; NaN is never returned: other text counts as 1970-01-01. */
export function dayNumberOf(dayOrInstant: string): number {
  const parts = DAY.exec(dayOrInstant)
  return parts === null ? 0 : dayNumber(Number(parts[1]), Number(parts[2]), Number(parts[3]))
}

/** Whole days from one day or instant to another; negative when `to` is earlier. */
export const daysBetween = (from: string, to: string): number => dayNumberOf(to) - dayNumberOf(from)

/**
 * The day at a site on which something on record was done, `instant` in UTC, `today` the site's own day. Where the site
 * lies west of Greenwich an evening is the next day in UTC already, and nobody does anything tomorrow: that is today.
 */
export const doneOn = (instant: string, today: string): string =>
  daysBetween(today, instant) === 1 ? dayFromNumber(dayNumberOf(today)) : instant.slice(0, 10)

/** The day some days after another. */
export const addDays = (day: string, days: number): string => dayFromNumber(dayNumberOf(day) + days)

/**
 * Days since 1970-01-01 of a civil date. Source: the era-and-day-of-era arithmetic in common use for the proleptic
 * Gregorian calendar (400-year eras of 146 097 days, years counted from March).
 */
export function dayNumber(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const era = Math.floor(y / 400)
  const yearOfEra = y - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear
  return era * 146_097 + dayOfEra - 719_468
}

/** The calendar day of a day number, as `2026-03-09`. */
export function dayFromNumber(number: number): string {
  const z = number + 719_468
  const era = Math.floor(z / 146_097)
  const dayOfEra = z - era * 146_097
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const shifted = Math.floor((5 * dayOfYear + 2) / 153)
  const day = dayOfYear - Math.floor((153 * shifted + 2) / 5) + 1
  const month = shifted < 10 ? shifted + 3 : shifted - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
}
