import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { SiteFile } from '#core/documents/site-schema'
import type { Step } from '#core/records/index'
import { computeWorksheet } from '#core/worksheet/compute'

const url = new URL('../../../assets/demo/lantern-lane-cafe.json', import.meta.url)
const file = JSON.parse(readFileSync(url, 'utf8')) as SiteFile
const pump = file.site.machines.flatMap(({ pumps }) => pumps)[0]
const visit = file.site.visits.at(-1)
if (pump === undefined || visit === undefined) throw new Error('the demo site')
const made = visit.work.find((work) => work.pumpId === pump.id)?.steps.find((step) => step.kind === 'test')
if (made === undefined) throw new Error('a test of the pump')
const test: Step = made

/** What the series of the first pump say of an old tube, at an open visit with these steps. */
function oldTubes(steps: readonly Step[]): readonly boolean[] {
  const machines = file.site.machines.map((machine) => ({
    ...machine,
    pumps: machine.pumps.map((one) => ({
      ...one,
      tube: { ...one.tube, fittedOn: '2001-01-01', replaceAfterDays: '365' },
    })),
  }))
  const open = { ...visit, id: 'open', closing: null, setupId: null, work: [{ ...work(steps) }] }
  const site = { ...file.site, machines, visits: [open] } as SiteFile['site']
  const sheet = computeWorksheet({ ...file, site, settings: null, asOf: test.at.slice(0, 10) })
  const tests = sheet.visits[0]?.pumps.find((one) => one.pumpId === pump?.id)?.tests ?? []
  return tests.map((one) => one.quality.findings.some((finding) => finding.code === 'tube-overdue'))
}
const work = (steps: readonly Step[]) => ({ pumpId: pump.id, steps, verifications: [] })

describe('a tube over its time', () => {
  it('is no longer held against the runs after a new one was fitted, and still against those before', () => {
    const fitted: Step = { kind: 'tube-fitted', id: 'fitted', at: test.at }
    expect(oldTubes([test])).toEqual([true])
    expect(oldTubes([test, fitted, { ...test, id: 'after' }])).toEqual([true, false])
  })
})
