import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { decode } from '#core/documents/decode'
import type { SiteFile } from '#core/documents/site-schema'
import type { Step } from '#core/records/index'
import { computeWorksheet } from '#core/worksheet/compute'
import { pumpTrend, type PumpTrend } from '#core/worksheet/pump-trend'
import { good } from '../../support/outcomes'

const demo = (name: string): SiteFile =>
  good(
    decode(
      'site',
      readFileSync(fileURLToPath(new URL(`../../../assets/demo/${name}`, import.meta.url)), 'utf8'),
    ),
  ).document

function trends(file: SiteFile): readonly PumpTrend[] {
  const asOf =
    file.site.visits
      .map((visit) => visit.startedAt.slice(0, 10))
      .toSorted()
      .at(-1) ?? ''
  const worksheet = computeWorksheet({ ...file, settings: null, asOf })
  return file.site.machines.flatMap((machine) =>
    machine.pumps.map((pump) => good(pumpTrend(file.site, worksheet, file, pump.id))),
  )
}

/** The same tests, the first run of each taken for 120 s: its flow lies far from the others. */
const scatter = (all: readonly Step[]): readonly Step[] =>
  all.map((step) =>
    step.kind === 'test'
      ? {
          ...step,
          runs: step.runs.map((run, i) =>
            i === 0 ? { ...run, seconds: { value: '120', unit: 's' as const } } : run,
          ),
        }
      : step,
  )

describe('a pump across its visits', () => {
  const school = demo('millbrook-school-kitchen.json')

  it('shows every visit that tested it, in order, with the window as it stood', () => {
    for (const trend of trends(school)) {
      expect(trend.visits).toHaveLength(school.site.visits.length)
      const days = trend.visits.map((visit) => visit.day)
      expect(days).toEqual(days.toSorted())
      for (const { window } of trend.visits) {
        expect(window.flow?.low).toBeLessThan(window.flow?.target ?? 0)
        expect(window.dose?.low).toBeLessThan(window.dose?.target ?? 0)
      }
    }
  })

  it('puts flow, dose and window on one footing: the flow is in its band exactly when the dose is in its', () => {
    for (const { visits } of trends(school))
      for (const { found, window } of visits) {
        if (found.flow === null || found.dose === null || window.flow === null || window.dose === null)
          throw new Error('a demo visit lacks its figures')
        expect(found.flow.value < window.flow.low).toBe(found.dose.value < window.dose.low)
        expect(found.dose.value / window.dose.target).toBeCloseTo(found.flow.value / window.flow.target, 9)
      }
  })

  it('foretells against the window of the bench, also for a tank that loses water on the ware', () => {
    const losing: SiteFile = {
      ...school,
      site: {
        ...school.site,
        snapshots: [],
        machines: school.site.machines.map((machine) =>
          machine.wash.kind === 'tank'
            ? { ...machine, wash: { ...machine.wash, carriedOut: { value: '0.9', unit: 'L' } } }
            : machine,
        ),
      },
    }
    const both = trends(losing)
    expect(both.length).toBeGreaterThan(1)
    for (const { window, visits } of both) expect(good(window)).toEqual(visits.at(-1)?.window.flow)
  })

  it('calls no pump in or out by runs that scatter too far to tell', () => {
    const last = school.site.visits.at(-1)
    if (last === undefined) throw new Error('a visit')
    const scattered = {
      ...last,
      work: last.work.map((work) => ({ ...work, steps: scatter(work.steps) })),
    }
    const visits = [...school.site.visits.slice(0, -1), scattered]
    const [before] = trends(school)
    const [after] = trends({ ...school, site: { ...school.site, visits } } as SiteFile)
    expect(before?.visits.at(-1)?.found.verdict).not.toBeNull()
    expect(after?.visits.at(-1)?.found.verdict).toBeNull()
  })

  it('marks the day a new tube was fitted and fits each tube by itself', () => {
    const fitted = school.site.machines[0]?.pumps[0]?.tube.fittedOn ?? null
    const [trend] = trends(school)
    expect(trend?.marks.filter((mark) => mark.kind === 'tube').map((mark) => mark.day)).toEqual([fitted])
    expect(trend?.drift.tubes).toHaveLength(2)
  })

  it('counts only tests that can be trusted towards drift', () => {
    const untrusted = trends(demo('lantern-lane-cafe.json'))
      .flatMap((trend) => trend.visits)
      .flatMap((visit) => [visit.found, ...(visit.left === null ? [] : [visit.left])])
      .filter((test) => !test.trusted)
    const used = trends(demo('lantern-lane-cafe.json')).flatMap((trend) =>
      trend.drift.changes.flatMap((change) => [change.from.testId, change.to.testId]),
    )
    expect(untrusted.length).toBeGreaterThan(0)
    for (const test of untrusted) expect(used).not.toContain(test.testId)
  })

  it('knows no pump that is not there', () => {
    const worksheet = computeWorksheet({ ...school, settings: null, asOf: '2026-11-10' })
    expect(pumpTrend(school.site, worksheet, school, 'nobody')).toMatchObject({
      ok: false,
      problem: { code: 'not-found' },
    })
  })
})
