import { overdueTubes } from '#core/drift/overdue-tubes'
import type { Day, Product, Site } from '#core/records/index'
import { awayWords, dayWords, daysFrom } from '../../state/days-words'
import { nextVisitDay } from '../../state/site-outlook'
import { setupGaps } from '../setup/setup-gaps'
import type { MachineFacts } from './pump-cards'

export interface NextStep {
  readonly icon: 'bad' | 'edit' | 'good' | 'open' | 'unknown' | 'warn'
  readonly tone: 'good' | 'warn' | 'bad' | 'plain'
  readonly text: string
  /** where it is done, if that is another page of the site */
  readonly at?: 'setup'
}

/** What comes next at a site, the most pressing first. Never empty. */
export function nextSteps(
  site: Site,
  machines: readonly MachineFacts[],
  products: readonly Product[],
  today: Day,
): readonly NextStep[] {
  const steps = [
    ...outOfWindow(machines),
    ...tubes(site, today),
    ...due(site, today),
    ...notEntered(site, products),
  ]
  return steps.length > 0
    ? steps
    : [{ icon: 'good', tone: 'good', text: 'Nothing is pressing. All pumps were left as they should be.' }]
}

function outOfWindow(machines: readonly MachineFacts[]): readonly NextStep[] {
  return machines.flatMap(({ machine, pumps }) =>
    pumps.flatMap(({ pump, last }): readonly NextStep[] => {
      const name = machines.length > 1 ? `${machine.name}, ${pump.name}` : pump.name
      if (last === null)
        return [{ icon: 'unknown', tone: 'plain', text: `${name}: not tested at any visit yet` }]
      if (last.found.state === 'proved-out' || last.found.state === 'out-not-proved')
        return [
          { icon: 'bad', tone: 'bad', text: `${name}: was left outside its window. Test and adjust it.` },
        ]
      if (last.found.state === 'cannot-tell')
        return [{ icon: 'unknown', tone: 'warn', text: `${name}: its last runs do not tell. Time it again.` }]
      return []
    }),
  )
}

const tubes = (site: Site, today: Day): readonly NextStep[] =>
  overdueTubes(site, today).map(({ pump, days }) => ({
    icon: 'warn',
    tone: 'warn',
    text: `${pump.name}: its tube is ${days === 1 ? 'one day' : `${days} days`} over its time. Take a new one along.`,
  }))

function due(site: Site, today: Day): readonly NextStep[] {
  const day = nextVisitDay(site)
  if (day === null) return []
  const late = daysFrom(day, today) > 0
  const words = `${dayWords(day)}, ${awayWords(day, today)}`
  return [
    {
      icon: late ? 'warn' : 'open',
      tone: late ? 'warn' : 'plain',
      text: late ? `The visit was due on ${words}.` : `Next visit on ${words}.`,
    },
  ]
}

function notEntered(site: Site, products: readonly Product[]): readonly NextStep[] {
  const gaps = setupGaps(site, products).length
  return gaps === 0
    ? []
    : [
        {
          icon: 'edit',
          tone: 'plain',
          text: `${gaps} ${gaps === 1 ? 'thing is' : 'things are'} still to be entered.`,
          at: 'setup',
        },
      ]
}
