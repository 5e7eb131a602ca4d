import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { SiteFile } from '#core/documents/site-schema'
import type { Site } from '#core/records/index'
import { siteFacts } from '#core/documents/site-facts'
import { computeWorksheet } from '#core/worksheet/compute'
import { outlookOf } from '#core/worksheet/site-outlook'
import { newSite } from '#renderer/commands/setup/new-site.ts'
import { startVisit } from '#renderer/commands/visit/start-and-close.ts'
import { dayIn } from '#renderer/state/clock.svelte.ts'
import { nextVisitDay, signsOf } from '#renderer/state/site-outlook.ts'

const file = JSON.parse(
  readFileSync(new URL('../../../assets/demo/harbourview-hotel-bar.json', import.meta.url), 'utf8'),
) as SiteFile
const last = file.site.visits.findLast((visit) => visit.closing !== null)
const words = (site: Site, today: string): readonly string[] => {
  const worksheet = computeWorksheet({ ...file, site, settings: null, asOf: today })
  const outlook = outlookOf(site, worksheet, (instant) => dayIn(new Date(instant), site.timeZone))
  return signsOf(siteFacts(site), outlook, today).map((sign) => sign.word)
}
const withClosing = (nextVisitOn: string | null, visitEveryDays: string | null): Site => ({
  ...file.site,
  visitEveryDays,
  visits: file.site.visits.map((visit) =>
    visit === last && visit.closing !== null
      ? { ...visit, closing: { ...visit.closing, nextVisitOn } }
      : visit,
  ),
})
const empty = newSite({
  id: '00000000-0000-4000-8000-000000000001',
  name: 'New',
  timeZone: 'UTC',
  settings: { currency: 'EUR', units: 'metric' },
})

describe('when the next visit is due', () => {
  it('is the day set when the last one was closed', () => {
    expect(nextVisitDay(withClosing('2027-02-01', '42'))).toBe('2027-02-01')
  })
  it('is else the usual interval after it', () => {
    const start = (last?.startedAt ?? '').slice(0, 10)
    const then = new Date(Date.parse(`${start}T12:00:00Z`) + 42 * 86_400_000).toISOString().slice(0, 10)
    expect(nextVisitDay(withClosing(null, '42'))).toBe(then)
  })
  it('is not known without either, nor before the first visit', () => {
    expect(nextVisitDay(withClosing(null, null))).toBeNull()
    expect(nextVisitDay(withClosing(null, 'often'))).toBeNull()
    expect(nextVisitDay(empty)).toBeNull()
  })
})

describe('a site seen from a distance', () => {
  it('says what is missing before there is anything to judge', () => {
    expect(words(empty, '2026-11-25')).toEqual(['No pumps set up'])
    expect(words({ ...file.site, visits: [] }, '2026-11-25')).toEqual(['Not visited yet'])
  })
  it('says that a visit is late from the day after it was due', () => {
    const site = withClosing('2027-02-01', '42')
    expect(words(site, '2027-02-01').join()).not.toMatch(/due/u)
    expect(words(site, '2027-02-02')).toContain('Visit was due yesterday')
  })
  it('puts an open visit first', () => {
    const at = '2027-01-01T10:00:00.000Z'
    const open = startVisit(file.site, { id: '00000000-0000-4000-8000-000000000002', at, by: '' })
    expect(words(open, '2027-01-01')[0]).toBe('Visit open')
  })
  it('calls pumps in window only when each of them is', () => {
    const pumps = file.site.machines.flatMap((machine) => machine.pumps)
    expect(pumps.length).toBeGreaterThan(1)
    const narrowed: Site = {
      ...file.site,
      snapshots: file.site.snapshots.map((snapshot) => ({
        ...snapshot,
        machines: snapshot.machines.map((machine) => ({
          ...machine,
          pumps: machine.pumps.map((pump, index) =>
            index === 0 && pump.window !== null
              ? { ...pump, window: { ...pump.window, low: '900', target: '950', high: '990' } }
              : pump,
          ),
        })),
      })),
    }
    expect(words(file.site, '2026-11-25').join()).toMatch(/in window/u)
    expect(words(narrowed, '2026-11-25').join()).toMatch(/1 of 2 pumps left out of window/u)
  })
})
