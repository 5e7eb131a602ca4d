import {
  closeSync,
  fsyncSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { decode } from '#core/documents/decode'
import { encode } from '#core/documents/encode'
import type { SiteFile } from '#core/documents/site-schema'
import { computeWorksheet } from '#core/worksheet/compute'
import { bigSite } from './big-site'
import { floorTotals } from './floor'
import { ratio, timed, type Ratio } from './measure'

/**
 * `npm run bench`: how far each job is from the least that could be done, as ratios of medians from one run on one
 * machine. Writes test-results/bench.json.
 */
const compute = (file: SiteFile): number => {
  const worksheet = computeWorksheet({ ...file, settings: null, asOf: '2026-03-10' })
  return worksheet.use.reduce(
    (sum, use) => sum + (use.litresPerMonth.ok ? use.litresPerMonth.value.value : 0),
    0,
  )
}

// A closed visit is kept by identity: a fresh copy makes every figure be worked out again.
const results: Ratio[] = []

const site = bigSite(120, 5)
const expected = floorTotals(site)
const got = compute(site)
if (Math.abs(got - expected.litres) > 1e-9 * expected.litres)
  throw new Error(`the floor yields ${expected.litres} L, the worksheet ${got} L: the comparison is void`)
results.push(
  await ratio('(a) worksheet of one site, 3 pumps, 120 visits, 5 runs', 3, compute, floorTotals, 25, () =>
    structuredClone(site),
  ),
)

const small = Array.from({ length: 200 }, (_, i) => bigSite(24, 3, i + 1))
results.push(
  await ratio(
    '(b) 200 sites x 24 visits',
    3,
    (sites) => sites.map(compute),
    (sites) => sites.map(floorTotals),
    3,
    () => small.map((one) => structuredClone(one)),
  ),
)

const text = encode('site', site)
results.push(
  await ratio(
    '(c) decode of a site file',
    3,
    () => decode('site', text),
    () => JSON.parse(text) as unknown,
    25,
    () => text,
  ),
)

const growth: { readonly sites: number; readonly perSite: number }[] = []
for (const sites of [50, 100, 200]) {
  const timing = await timed(
    (some: readonly SiteFile[]) => some.map(compute),
    3,
    () => small.slice(0, sites).map((one) => structuredClone(one)),
  )
  growth.push({ sites, perSite: timing.median / sites })
}

const folder = mkdtempSync(join(tmpdir(), 'dosewright-bench-'))
const bare = await timed(
  () => {
    const file = openSync(join(folder, 'x.tmp'), 'w')
    writeFileSync(file, text)
    fsyncSync(file)
    closeSync(file)
    renameSync(join(folder, 'x.tmp'), join(folder, 'x'))
  },
  25,
  () => null,
)
rmSync(folder, { recursive: true })

for (const one of results)
  console.log(
    `${one.name}: ${one.ratio.toFixed(2)} x the floor` +
      `${one.goal === null ? '' : ` (goal ${one.goal})`}; ours ${one.ours.median.toFixed(2)} ms ` +
      `[${one.ours.low.toFixed(2)}, ${one.ours.high.toFixed(2)}], floor ${one.floor.median.toFixed(2)} ms`,
  )
console.log(
  `(e) time per site at ${growth.map((one) => `${one.sites}: ${one.perSite.toFixed(2)} ms`).join(', ')}; ` +
    `a bare write of ${(text.length / 1000).toFixed(0)} kB takes ${bare.median.toFixed(2)} ms`,
)

const out = fileURLToPath(new URL('../../test-results/', import.meta.url))
mkdirSync(out, { recursive: true })
writeFileSync(join(out, 'bench.json'), `${JSON.stringify({ ratios: results, growth, bare }, null, 2)}\n`)
