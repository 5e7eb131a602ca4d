import { dayWords, MONTHS } from '#core/messages/day-words'
import type { Day, Instant } from '#core/records/index'

export { dayWords, MONTHS }

const DAY = 86_400_000
const two = (part: number): string => String(part).padStart(2, '0')
const noon = (day: Day): number => Date.parse(`${day}T12:00:00Z`)

/** Whole days from one calendar day to another; negative when the second is earlier. */
export const daysFrom = (from: Day, to: Day): number => Math.round((noon(to) - noon(from)) / DAY)

/** How long ago a day was, or when it will be: `today`, `yesterday`, `12 days ago`, `in 3 days`. */
export function awayWords(day: Day, today: Day): string {
  const days = daysFrom(day, today)
  if (days === 0) return 'today'
  if (days === 1) return 'yesterday'
  if (days === -1) return 'tomorrow'
  if (days > 0) return days < 60 ? `${days} days ago` : `${Math.round(days / 30.4375)} months ago`
  return days > -60 ? `in ${-days} days` : `in ${Math.round(-days / 30.4375)} months`
}

/** An instant in this computer's own time: `9 Mar 2026, 14:05`. */
export function instantWords(instant: Instant): string {
  const time = new Date(instant)

  const day = `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`
  return `${dayWords(day)}, ${two(time.getHours())}:${two(time.getMinutes())}`
}
