import type { SiteFacts } from '#core/documents/site-facts'
import type { Day, Site } from '#core/records/index'
import { nextVisitDay as dueDay } from '#core/worksheet/next-visit'
import type { LeftPumps, SiteOutlook } from '#core/worksheet/site-outlook'
import { dayIn } from './clock.svelte'
import { awayWords, daysFrom } from './days-words'

export type Tone = 'good' | 'warn' | 'bad' | 'open' | 'unknown'
export interface Sign {
  readonly tone: Tone
  readonly word: string
}

/** The signs of a site in a list: those that ask for attention first, and always at least one. */
export function signsOf(
  { pumps, openVisitId }: Pick<SiteFacts, 'pumps' | 'openVisitId'>,
  outlook: SiteOutlook,
  today: Day,
): readonly Sign[] {
  const signs: Sign[] = openVisitId === null ? [] : [{ tone: 'open', word: 'Visit open' }]
  if (pumps === 0) return [...signs, { tone: 'unknown', word: 'No pumps set up' }]
  if (outlook.left === null) return signs.length > 0 ? signs : [{ tone: 'unknown', word: 'Not visited yet' }]
  return [...signs, ...overdue(outlook, today), ...tubeSign(outlook, today), pumpSign(outlook.left)]
}

/** When the next visit is due, on the calendar of the site. Null when unknown. */
export const nextVisitDay = (site: Site): Day | null =>
  dueDay(site, (instant) => dayIn(new Date(instant), site.timeZone))

function overdue({ nextVisitOn }: SiteOutlook, today: Day): readonly Sign[] {
  if (nextVisitOn === null || daysFrom(nextVisitOn, today) <= 0) return []
  return [{ tone: 'warn', word: `Visit was due ${awayWords(nextVisitOn, today)}` }]
}

function tubeSign({ tubesOverOn }: SiteOutlook, today: Day): readonly Sign[] {
  const late = tubesOverOn.filter((day) => day <= today).length
  if (late === 0) return []
  return [{ tone: 'warn', word: late === 1 ? 'One tube over its time' : `${late} tubes over their time` }]
}

function pumpSign({ all, out, inside, proved }: LeftPumps): Sign {
  if (out > 0) return { tone: 'bad', word: `${out} of ${all} pumps left out of window` }
  if (inside < all) return { tone: 'unknown', word: `${inside} of ${all} pumps known to be in window` }
  const words = all === 1 ? 'Pump in window' : `${all === 2 ? 'Both' : `All ${all}`} pumps in window`
  return { tone: 'good', word: proved === all ? words : `${words}, ${all - proved} not proved` }
}
