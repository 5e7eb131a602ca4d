import type { Day } from '../records'
import { dayFromNumber, dayNumber } from '../units/days'
import type { DateOrder } from './delivery-types'

export type DayReading = Day | 'unreadable' | 'order-unknown'

const ISO = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/u
const PARTS = /^(\d{1,2})[-/. ]{1,2}(\d{1,2})[-/. ]{1,2}(\d{2}|\d{4})$/u

/**
 * A day as lists write it: `2026-03-09`, `9.3.2026`, `09/03/26`. Two digits of a year are this century's. Which of two
 * small numbers is the month only `order` can say; without it such a day is `order-unknown`.
 */
export function readDay(text: string, order: DateOrder | null): DayReading {
  const trimmed = text.trim()
  const iso = ISO.exec(trimmed)
  if (iso !== null) return dayOr(Number(iso[1]), Number(iso[2]), Number(iso[3]))
  const parts = PARTS.exec(trimmed)
  if (parts === null) return 'unreadable'
  const [first, second, yearText] = [Number(parts[1]), Number(parts[2]), parts[3] ?? '']
  const year = yearText.length === 2 ? 2000 + Number(yearText) : Number(yearText)
  if (order === 'day-first') return dayOr(year, second, first)
  if (order === 'month-first') return dayOr(year, first, second)
  if (first === second) return dayOr(year, first, second)
  if (first > 12) return dayOr(year, second, first)
  if (second > 12) return dayOr(year, first, second)
  return 'order-unknown'
}

/** The order the days of a list give away: by one that can only be read one way. Null when none does, or they differ. */
export function dateOrderOf(texts: readonly string[]): DateOrder | null {
  let dayFirst = false
  let monthFirst = false
  for (const text of texts) {
    const parts = PARTS.exec(text.trim())
    if (parts === null) continue
    if (Number(parts[1]) > 12 && Number(parts[2]) <= 12) dayFirst = true
    if (Number(parts[2]) > 12 && Number(parts[1]) <= 12) monthFirst = true
  }
  if (dayFirst === monthFirst) return null
  return dayFirst ? 'day-first' : 'month-first'
}

/** A day that exists: the 31st of April does not. */
function dayOr(year: number, month: number, day: number): DayReading {
  if (month < 1 || month > 12 || day < 1 || year < 1 || year > 9999) return 'unreadable'
  const number = dayNumber(year, month, day)
  const back = dayFromNumber(number)
  return Number(back.slice(5, 7)) === month && Number(back.slice(8)) === day ? back : 'unreadable'
}
