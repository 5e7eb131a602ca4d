import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import { decode } from '#core/documents/decode'
import type { SiteFile } from '#core/documents/site-schema'
import { worksheetJson } from '#core/documents/worksheet-json'
import { worksheetFile, worksheetJsonSchema, type WorksheetFile } from '#core/documents/worksheet-schema'
import { sentence } from '#core/messages/sentence'
import type { Scenario } from '#core/records/index'
import { computeWorksheet } from '#core/worksheet/compute'
import { glassOf } from '#core/worksheet/glass-of'
import { spendOf } from '#core/worksheet/spend-of'
import reference from '../../references/glass-weights.json'
import { good } from '../../support/outcomes'

const demo = new URL('../../../assets/demo/', import.meta.url)
const sites: readonly (readonly [string, SiteFile])[] = readdirSync(demo).map((name) => [
  name,
  good(decode('site', readFileSync(new URL(name, demo), 'utf8'))).document,
])

const half = (file: SiteFile, over: Partial<Scenario> = {}): Scenario => ({
  id: '00000000-0000-4000-8000-00000000000a',
  name: 'Half of it',
  racksPercent: '50',
  rinseVolumePercent: null,
  changes: file.site.machines
    .flatMap((machine) => machine.pumps)
    .slice(0, 1)
    .map((pump) => ({
      pumpId: pump.id,
      productId: null,
      dosePercent: '90',
      pricePerContainer: '10.00',
      containerSize: { value: '4', unit: 'L' },
      strengthPercent: null,
    })),
  ...over,
})

/** What the command prints, through text as another program gets it, read by the schema. */
function printed(file: SiteFile): WorksheetFile {
  const { site, products, instruments } = file
  const records = { site, products, instruments, settings: DEFAULT_SETTINGS }
  const worksheet = computeWorksheet({ ...records, asOf: '2026-11-25' })
  const json = worksheetJson(worksheet, sentence, spendOf(worksheet, records), glassOf(worksheet, site))
  return worksheetFile.parse(JSON.parse(JSON.stringify(json)))
}

describe('the worksheet as JSON', () => {
  it.each(sites)('of %s keeps to its schema with what-ifs in it, good and bad', (_, file) => {
    const scenarios = [half(file), half(file, { name: 'Wrong', racksPercent: '-3' })]
    const { spend } = printed({ ...file, site: { ...file.site, scenarios } })
    expect(spend?.scenarios).toHaveLength(2)
    const [fine, wrong] = spend?.scenarios ?? []
    expect(fine?.changePerMonth).toMatch(/^-\d+\.\d+$/u)
    expect(fine?.lines).toHaveLength(file.site.machines.flatMap((machine) => machine.pumps).length)
    expect(wrong?.changePerMonth).toMatchObject({ problem: 'number-out-of-range' })
  })

  it.each(sites)(
    'of %s keeps to it without prices, stock or visits, and says why figures are missing',
    (_, file) => {
      const bare = {
        ...file,
        products: file.products.map((product) => ({ ...product, prices: [] })),
        site: { ...file.site, stock: [], visits: [] },
      }
      const { spend, totals } = printed(bare)
      expect(totals.costPerMonth).toHaveProperty('says')
      for (const product of spend?.products ?? []) expect(product.reorder).toHaveProperty('says')
    },
  )

  it('refuses a field that the schema does not name, anywhere in the spend', () => {
    const [, file] = sites[0] ?? []
    if (file === undefined) throw new Error('there is no demo site')
    const good = printed({ ...file, site: { ...file.site, scenarios: [half(file)] } })
    for (const spoil of [
      { ...good, spend: { ...good.spend, more: 1 } },
      { ...good, spend: { ...good.spend, products: [{ ...good.spend?.products[0], more: 1 }] } },
      { ...good, spend: { ...good.spend, scenarios: [{ ...good.spend?.scenarios[0], more: 1 }] } },
      { ...good, glass: [{ ...good.glass[0], more: 1 }] },
      { ...good, racks: [{ ...good.racks[0], more: 1 }] },
    ])
      expect(worksheetFile.safeParse(spoil).success).toBe(false)
  })

  it.each(sites)(
    'of %s tells the worked glass check to four digits, and what water leaves on a glass',
    (_, file) => {
      const machineId = file.site.machines[0]?.id ?? null
      const { glass } = printed({
        ...file,
        site: {
          ...file.site,
          visits: [],
          machines: [],
          glassChecks: [
            {
              id: '00000000-0000-4000-8000-00000000000b',
              at: '2026-11-25T09:00:00.000Z',
              machineId,
              seen: [],
              ware: [],
              spread: 'unknown',
              since: 'unknown',
              answers: reference.example.evidence.map((evidence) => ({ evidence, answer: 'yes' as const })),
              confirmedCause: null,
              confirmedAt: null,
            },
          ],
        },
      })
      // Source: worked example of the trade notes, computed by a separate script.
      for (const [at, [cause, share]] of Object.entries(reference.example.shares).entries()) {
        expect(glass[0]?.causes[at]?.cause).toBe(cause)
        expect(glass[0]?.causes[at]?.share).toBeCloseTo(share, 4)
      }
      expect(glass[0]?.causes[0]?.reasons.map((reason) => reason.weight).toSorted()).toEqual([
        0.4, 0.6, 1.8, 2.5,
      ])
      expect(glass[0]).toMatchObject({ separated: true, open: ['rinse-aid-low'], confirmedCause: null })
    },
  )

  it('is described by the published schema', () => {
    const published: unknown = JSON.parse(
      readFileSync(new URL('../../../assets/worksheet.schema.json', import.meta.url), 'utf8'),
    )
    expect(published).toEqual(JSON.parse(JSON.stringify(worksheetJsonSchema())))
  })
})
