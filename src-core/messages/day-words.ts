import type { Day } from '../records'

export const MONTHS = [
  'Jan',
  'Feb',
  'Mar',
  'Apr',
  'May',
  'Jun',
  'Jul',
  'Aug',
  'Sep',
  'Oct',
  'Nov',
  'Dec',
] as const

/** A day as people write it, with no order of day and month to mistake: `9 Mar 2026`. */
export function dayWords(day: Day): string {
  const [year = '', month = '', date = ''] = day.split('-')
  return `${Number(date)} ${MONTHS[Number(month) - 1] ?? month} ${year}`
}
