import type { Closure, Id, NumberText, Season, Site, SiteCalendar } from '#core/records/index'
import { changeById, removeById } from '../lists'

const withCalendar = (site: Site, facts: Partial<SiteCalendar>): Site => ({
  ...site,
  calendar: { ...site.calendar, ...facts },
})

export const changeCalendar = (
  site: Site,
  facts: Partial<Pick<SiteCalendar, 'daysPerWeek' | 'growthPercentPerYear'>>,
): Site => withCalendar(site, facts)

export const addClosure = (site: Site, closure: Closure): Site =>
  withCalendar(site, { closures: [...site.calendar.closures, closure] })

export const changeClosure = (site: Site, id: Id, facts: Partial<Omit<Closure, 'id'>>): Site =>
  withCalendar(site, {
    closures: changeById(site.calendar.closures, id, (closure) => ({ ...closure, ...facts })),
  })

export const removeClosure = (site: Site, id: Id): Site =>
  withCalendar(site, { closures: removeById(site.calendar.closures, id) })

/** Sets how busy a month (1 to 12) is; null makes it an ordinary month again. */
export function setSeason(site: Site, month: number, percent: NumberText | null): Site {
  const others = site.calendar.seasons.filter((season) => season.month !== month)
  const seasons: readonly Season[] = percent === null ? others : [...others, { month, percent }]
  return withCalendar(site, { seasons: seasons.toSorted((a, b) => a.month - b.month) })
}
