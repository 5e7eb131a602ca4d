import fc from 'fast-check'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { overdueTubes, tubesOverOn } from '#core/drift/overdue-tubes'
import type { SiteFile } from '#core/documents/site-schema'
import type { Site } from '#core/records/index'
import { addDays } from '#core/units/days'
import { computeWorksheet } from '#core/worksheet/compute'
import { outlookOf } from '#core/worksheet/site-outlook'

const demo = new URL('../../../assets/demo/', import.meta.url)
const files = readdirSync(demo)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(new URL(name, demo), 'utf8')) as SiteFile)

/** The site with its first tube fitted and limited like this. */
const withTube = (site: Site, fittedOn: string, replaceAfterDays: string): Site => ({
  ...site,
  machines: site.machines.map((machine) => ({
    ...machine,
    pumps: machine.pumps.map((pump) => ({ ...pump, tube: { ...pump.tube, fittedOn, replaceAfterDays } })),
  })),
})

const names = (of: Site, day: string): readonly string[] => overdueTubes(of, day).map((one) => one.pump.id)

describe('an outlook noted on one day', () => {
  it('counts on any day the tubes over their time that the site file gives on that day', () => {
    const [file] = files
    if (file === undefined) throw new Error('demo sites')
    const days = fc.integer({ min: 0, max: 4000 })
    const limit = fc.oneof(
      fc.integer({ min: 0, max: 2000 }).map(String),
      fc.double({ min: 0.01, max: 2000, noNaN: true }).map((value) => value.toFixed(2)),
    )
    fc.assert(
      fc.property(days, limit, days, (fitted, after, away) => {
        const today = addDays('2024-01-01', away)
        const site = withTube(file.site, addDays('2024-01-01', fitted), after)
        const late = tubesOverOn(site).filter((day) => day <= today).length
        expect(late).toBe(overdueTubes(site, today).length)
      }),
      { numRuns: 2000 },
    )
  })

  it('knows the tubes that visits fitted, also while the visit is still open', () => {
    const file = files.find(({ site }) => site.visits.some((visit) => visit.work.length > 0))
    if (file === undefined) throw new Error('demo sites')
    const old = withTube(file.site, '2024-01-01', '365')
    const pump = old.machines.flatMap((machine) => machine.pumps)[0]
    const last = old.visits.at(-1)
    if (pump === undefined || last === undefined) throw new Error('a pump and a visit')
    const fitted = { kind: 'tube-fitted', id: 'fitted', at: '2026-11-20T10:00:00.000Z' } as const
    const site: Site = {
      ...old,
      visits: [
        ...old.visits,
        {
          ...last,
          id: 'now',
          closing: null,
          work: [{ pumpId: pump.id, steps: [fitted], verifications: [] }],
        },
      ],
    }
    expect(names(old, '2026-11-25')).toContain(pump.id)
    expect(names(site, '2026-11-25')).not.toContain(pump.id)
    // 365 days from 20 November 2026 end on 20 November 2027
    expect(names(site, '2027-11-20')).not.toContain(pump.id)
    expect(names(site, '2027-11-21')).toContain(pump.id)
    expect(tubesOverOn(site)).toContain('2027-11-21')
  })

  it('says of the pumps what the worksheet says on any other day', () => {
    for (const file of files) {
      const noted = (asOf: string): unknown =>
        outlookOf(file.site, computeWorksheet({ ...file, settings: null, asOf }), (at) => at.slice(0, 10))
      expect(noted('2027-03-01')).toEqual(noted('2026-11-25'))
    }
  })
})
