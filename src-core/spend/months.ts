import type { Day } from '../records'
import { dayNumberOf } from '../units/days'

/** A calendar month, `2026-03`. */
export type Month = string

export const monthOf = (day: Day): Month => day.slice(0, 7)

export const firstDay = (month: Month): Day => `${month}-01`

/** The month `steps` after (or, negative, before) another. */
export function addMonths(month: Month, steps: number): Month {
  const count = Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7)) - 1 + steps
  const year = Math.floor(count / 12)
  return `${String(year).padStart(4, '0')}-${String(count - year * 12 + 1).padStart(2, '0')}`
}

/** First day number of a month, and of the one after it. */
export const monthDays = (month: Month): { readonly from: number; readonly to: number } => ({
  from: dayNumberOf(firstDay(month)),
  to: dayNumberOf(firstDay(addMonths(month, 1))),
})
