import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { decode } from '#core/documents/decode'
import type { SiteFile } from '#core/documents/site-schema'
import { worksheetJson } from '#core/documents/worksheet-json'
import { computeWorksheet } from '#core/worksheet/compute'
import { bigSite } from '../../bench/big-site'
import { good } from '../../support/outcomes'

/**
 * Work on speed must not move a figure. These digests of every part of the worksheets, each number with all its
 * digits, were taken before that work began; they say nothing about whether a figure is right, which the other tests
 * do. After a change that is meant to move figures, look at the difference and renew them with
 * `npx vitest run --config tests/vitest.config.ts tests/core/worksheet/frozen.test.ts -u`.
 */
const root = fileURLToPath(new URL('../../../', import.meta.url))
const kept = `${root}tests/fixtures/worksheets`

const read = (file: string): SiteFile => good(decode('site', readFileSync(`${root}${file}`, 'utf8'))).document

/** The same site with its last visit open again, so that advice and ways to settle are worked out as well. */
const reopened = (file: SiteFile): SiteFile => ({
  ...file,
  site: {
    ...file.site,
    visits: file.site.visits.map((visit, index, all) =>
      index === all.length - 1 ? { ...visit, closing: null } : visit,
    ),
  },
})

const sites: readonly (readonly [string, SiteFile])[] = [
  ...readdirSync(`${root}assets/demo`).flatMap((name) => {
    const file = read(`assets/demo/${name}`)
    const short = name.replace('.json', '')
    return [[short, file] as const, [`${short}-reopened`, reopened(file)] as const]
  }),
  ...['site-v1-full', 'site-v1-new'].map(
    (name) => [name, read(`tests/fixtures/documents/${name}.json`)] as const,
  ),
  ['big-site', bigSite(30, 5)],
  ['big-site-reopened', reopened(bigSite(30, 5))],
]

interface Shown {
  readonly visits: readonly {
    readonly visitId: string
    readonly pumps: readonly { readonly pumpId: string }[]
  }[]
  readonly [part: string]: unknown
}

/** Ids that builders of tests count up are left out: another test aid may shift them. */
const COUNTED_UP = /00000000-0000-4000-a000-\d{12}/gu

const digest = (value: unknown): string =>
  createHash('sha256').update(JSON.stringify(value).replace(COUNTED_UP, 'id')).digest('hex').slice(0, 24)

/** One line for each pump of each visit and each other part, so that a difference shows where it lies. */
function digests({ site, products, instruments }: SiteFile): string {
  const worksheet = computeWorksheet({ site, products, instruments, settings: null, asOf: '2026-03-10' })
  // the wording of problems is not of this test
  const { visits, ...rest } = worksheetJson(worksheet, (problem) => JSON.stringify(problem)) as Shown
  const lines = visits.flatMap((visit, v) => [
    ...visit.pumps.map((pump, p) => `visit ${v + 1} pump ${p + 1}: ${digest(pump)}`),
    `visit ${v + 1}: ${digest(visit)}`,
  ])
  return [...lines, ...Object.entries(rest).map(([part, value]) => `${part}: ${digest(value)}`), ''].join(
    '\n',
  )
}

describe('worksheets stay the same to the last digit', () => {
  it.each(sites)('%s', async (name, file) => {
    await expect(digests(file)).toMatchFileSnapshot(`${kept}/${name}.txt`)
  })
})
