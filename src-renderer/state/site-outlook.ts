import { overdueTubes } from '#core/drift/overdue-tubes'
import type { Day, Site } from '#core/records/index'
import type { PumpVisit, VisitResult, Worksheet } from '#core/worksheet/types'
import { nextVisitDay as dueDay } from '#core/worksheet/next-visit'
import { dayIn } from './clock.svelte'
import { awayWords, daysFrom } from './days-words'

export type Tone = 'good' | 'warn' | 'bad' | 'open' | 'unknown'
export interface Sign {
  readonly tone: Tone
  readonly word: string
}

/** What a site looks like from a distance: the signs that ask for attention first, and always at least one. */
export function siteOutlook(site: Site, worksheet: Worksheet, today: Day): readonly Sign[] {
  const closed = worksheet.visits.filter((visit) => visit.closed)
  const last = closed.at(-1)
  const open = site.visits.some((visit) => visit.closing === null)
  const signs: Sign[] = []
  if (open) signs.push({ tone: 'open', word: 'Visit open' })
  const pumps = site.machines.reduce((sum, machine) => sum + machine.pumps.length, 0)
  if (pumps === 0) return [...signs, { tone: 'unknown', word: 'No pumps set up' }]
  if (last === undefined) return open ? signs : [{ tone: 'unknown', word: 'Not visited yet' }]
  return [...signs, ...overdue(site, today), ...tubeSign(site, today), pumpSign(last)]
}

/** When the next visit is due, on the calendar of the site. Null when unknown. */
export const nextVisitDay = (site: Site): Day | null =>
  dueDay(site, (instant) => dayIn(new Date(instant), site.timeZone))

function overdue(site: Site, today: Day): readonly Sign[] {
  const due = nextVisitDay(site)
  if (due === null || daysFrom(due, today) <= 0) return []
  return [{ tone: 'warn', word: `Visit was due ${awayWords(due, today)}` }]
}

const tubeSign = (site: Site, today: Day): readonly Sign[] => {
  const late = overdueTubes(site, today).length
  if (late === 0) return []
  return [{ tone: 'warn', word: late === 1 ? 'One tube over its time' : `${late} tubes over their time` }]
}

function pumpSign(visit: VisitResult): Sign {
  const outside = visit.pumps.filter(isOut).length
  if (outside > 0)
    return { tone: 'bad', word: `${outside} of ${visit.pumps.length} pumps left out of window` }
  const all = visit.pumps.length
  const proved = visit.pumps.filter((pump) => pump.state === 'proved-in').length
  const inside = visit.pumps.filter((pump) => pump.state === 'in-not-proved').length + proved
  if (inside < all) return { tone: 'unknown', word: `${inside} of ${all} pumps known to be in window` }
  const words = all === 1 ? 'Pump in window' : `${all === 2 ? 'Both' : `All ${all}`} pumps in window`
  return { tone: 'good', word: proved === all ? words : `${words}, ${all - proved} not proved` }
}

const isOut = (pump: PumpVisit): boolean => pump.state === 'proved-out' || pump.state === 'out-not-proved'
