import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { decode } from '#core/documents/decode'
import type { SiteFile } from '#core/documents/site-schema'
import { worksheetJson } from '#core/documents/worksheet-json'
import { worksheetFile } from '#core/documents/worksheet-schema'
import { sentence } from '#core/messages/sentence'
import type { Machine, Verification } from '#core/records/index'
import { computeWorksheet } from '#core/worksheet/compute'
import { good } from '../../support/outcomes'

const demo: SiteFile = good(
  decode(
    'site',
    readFileSync(new URL('../../../assets/demo/millbrook-school-kitchen.json', import.meta.url), 'utf8'),
  ),
).document

const detergent = demo.site.machines
  .flatMap((machine) => machine.pumps)
  .find((pump) => pump.role === 'detergent')
if (detergent === undefined) throw new Error('the demo site has a detergent pump')

const probed = (machines: readonly Machine[]): readonly Machine[] =>
  machines.map((machine) => ({
    ...machine,
    pumps: machine.pumps.map((pump) =>
      pump.id === detergent.id
        ? {
            ...pump,
            control: 'probe' as const,
            window: { basis: 'g-per-L-tank' as const, low: '1.8', target: '2', high: '2.2' },
          }
        : pump,
    ),
  }))

const check = (id: string, over: Partial<Verification> = {}): Verification => ({
  id,
  at: '2026-01-05T10:00:00.000Z',
  method: 'conductivity',
  where: 'wash-tank',
  instrumentId: null,
  reading: '2200',
  step: null,
  factor: '900',
  blank: '400',
  ...over,
})

/** The site with a probe, and a check in the second visit and the second last. */
const file: SiteFile = {
  ...demo,
  site: {
    ...demo.site,
    machines: probed(demo.site.machines),
    snapshots: demo.site.snapshots.map((one) => ({ ...one, machines: probed(one.machines) })),
    visits: demo.site.visits.map((visit, index, all) => ({
      ...visit,
      work: visit.work.map((work) =>
        work.pumpId === detergent.id && (index === 1 || index === all.length - 2)
          ? {
              ...work,
              verifications: [
                check(`${visit.id}-c`, index === 1 ? {} : { factor: '1000', at: visit.startedAt }),
              ],
            }
          : work,
      ),
    })),
  },
}

const worksheet = computeWorksheet({ ...file, settings: null, asOf: '2026-11-25' })
const targets = worksheet.visits.map((visit) => visit.setPoints.map((one) => one.setPoint))

describe('the set point of a visit', () => {
  it('is asked for until a conductivity check is made, and then comes from the last one made by then', () => {
    // 400 + 900 x 2 and 400 + 1000 x 2 µS/cm
    expect(targets.map(([one]) => (one?.ok === true ? one.value.target : null))).toEqual([
      null,
      ...targets.slice(1, -2).map(() => 2200),
      2400,
      2400,
    ])
    const [first] = targets[0] ?? []
    expect(first?.ok === false && sentence(first.problem)).toMatch(/conductivity check/iu)
  })

  it('is there for pumps that a probe controls and no others', () => {
    for (const visit of worksheet.visits)
      expect(visit.setPoints.map((one) => one.pumpId)).toEqual([detergent.id])
    const timed = computeWorksheet({ ...demo, settings: null, asOf: '2026-11-25' })
    expect(timed.visits.flatMap((visit) => visit.setPoints)).toEqual([])
  })

  it('is in the worksheet JSON, as its schema has it', () => {
    const json = worksheetFile.parse(
      JSON.parse(JSON.stringify(worksheetJson(worksheet, sentence, undefined, []))),
    )
    expect(json.visits.at(-1)?.setPoints).toEqual([
      { pumpId: detergent.id, setPoint: { low: 2200, target: 2400, high: 2600, perGram: 1000, water: 400 } },
    ])
    expect(json.visits[0]?.setPoints[0]?.setPoint).toMatchObject({ problem: 'missing' })
  })
})
