import type { Day, SiteCalendar } from '#core/records/index'
import { closedDays, openCalendar } from '#core/spend/calendar'
import { formatNumber } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'
import { listed } from '../../parts/listed'
import { MONTHS } from '../../state/days-words'
import { count } from './spend-words'

/** The calendar that a month is worked out with: `Open 5 days a week; closed 42 days in the coming year`. */
export function calendarWords(calendar: SiteCalendar, asOf: Day, sign: DecimalSign): string | null {
  const read = openCalendar(calendar, asOf)
  if (!read.ok) return null
  const open = read.value
  const closed = closedDays(open, open.origin, open.origin + 365)
  const seasons = (wanted: (factor: number) => boolean): readonly string[] =>
    MONTHS.filter((_, index) => wanted(open.seasons.get(index + 1) ?? 1))
  const busier = seasons((factor) => factor > 1)
  const quieter = seasons((factor) => factor < 1)
  return [
    `Open ${count(open.daysPerWeek, 'day').replace('.', sign === 'comma' ? ',' : '.')} a week`,
    closed === 0
      ? 'no closed days entered for the coming year'
      : `closed ${count(closed, 'day')} in the coming year`,
    ...(busier.length > 0 ? [`busier in ${listed(busier)}`] : []),
    ...(quieter.length > 0 ? [`quieter in ${listed(quieter)}`] : []),
    ...(open.growth === 0
      ? []
      : [
          `${formatNumber(Math.abs(open.growth) * 100, 2, sign)} % ${open.growth > 0 ? 'more' : 'fewer'} racks every year`,
        ]),
  ].join('; ')
}
