import type { SiteFile } from '#core/documents/site-schema'
import { computeWorksheet } from '#core/worksheet/compute'
import type { Worksheet } from '#core/worksheet/types'
import { bigSite } from './big-site'
import { floorTotals } from './floor'
import { ratioOf, summary, timedTogether, type Ratio, type Timing } from './measure'

const worksheet = (file: SiteFile): Worksheet =>
  computeWorksheet({ ...file, settings: null, asOf: '2026-03-10' })

/** Litres a month of all pumps: the total that ours and the floor must agree on. */
const totals = (file: SiteFile): number =>
  worksheet(file).use.reduce(
    (sum, use) => sum + (use.litresPerMonth.ok ? use.litresPerMonth.value.value : 0),
    0,
  )

/** What a chart of all flows needs: every flow of the history with its interval. */
const everyFlow = (file: SiteFile): number => {
  let sum = 0
  for (const visit of worksheet(file).visits)
    for (const pump of visit.pumps)
      for (const test of pump.tests) sum += test.flow.ok ? test.flow.value.expanded : 0
  return sum
}

const everyPart = (file: SiteFile): number => read(worksheet(file))

function read(node: unknown): number {
  if (typeof node !== 'object' || node === null) return 1
  let parts = 0
  for (const key in node) parts += read((node as Readonly<Record<string, unknown>>)[key])
  return parts
}

function agree(file: SiteFile): void {
  const [expected, got] = [floorTotals(file).litres, totals(file)]
  if (Math.abs(got - expected) > 1e-9 * expected)
    throw new Error(`the floor yields ${expected} L, the worksheet ${got} L: the comparison is void`)
}

/** One site. A closed visit is kept by identity, so every round gets a fresh copy. */
export async function oneSite(): Promise<readonly Ratio[]> {
  const site = bigSite(120, 5)
  agree(site)
  const prepare = (): SiteFile => structuredClone(site)
  const same = structuredClone(site)
  const edited = (): SiteFile => ({ ...same, site: { ...same.site } })
  const [floor, opened, flows, all, again] = await timedTogether(
    [
      { work: floorTotals, prepare },
      { work: totals, prepare },
      { work: everyFlow, prepare },
      { work: everyPart, prepare },
      { work: totals, prepare: edited },
    ],
    40,
  )
  const against = (name: string, goal: number | null, ours: Timing | undefined): readonly Ratio[] =>
    floor === undefined || ours === undefined ? [] : [ratioOf(name, goal, ours, floor)]
  return [
    ...against('(a) worksheet of one site, 3 pumps, 120 visits, 5 runs', 3, opened),
    ...against('    and every flow with its interval read', null, flows),
    ...against('    and every part read, down to the last line of every budget', null, all),
    ...against('    anew after an edit, the closed visits known', null, again),
  ]
}

export interface Growth {
  readonly sites: number
  /** processor time per site, ms */
  readonly perSite: number
}

const BATCH = 100

/**
 * A portfolio, in batches of sites that are made, worked out and let go. The growth is the time per site of portfolios
 * of a hundred, of a thousand and of all: the median of the stretches of that length.
 */
export function portfolio(sites: number): { readonly ratio: Ratio; readonly growth: readonly Growth[] } {
  const made = Array.from({ length: BATCH }, (_, i) => bigSite(24, 3, i + 1))
  for (const file of made.slice(0, 3)) agree(file)
  const batch = (work: (file: SiteFile) => unknown): number => {
    const fresh = made.map((one) => structuredClone(one))
    const began = process.cpuUsage()
    for (const file of fresh) work(file)
    const { user, system } = process.cpuUsage(began)
    return (user + system) / 1000 / BATCH
  }
  // neither of the two meets a cold compiler
  for (let i = 0; i < 20; i += 1) for (const work of [floorTotals, totals]) batch(work)
  const taken = { floor: [] as number[], ours: [] as number[] }
  for (let done = 0; done < sites; done += BATCH) {
    taken.floor.push(batch(floorTotals))
    taken.ours.push(batch(totals))
  }
  const ratio = ratioOf(`(b) one of ${sites} sites x 24 visits`, 3, summary(taken.ours), summary(taken.floor))
  const growth = [100, 1000, 10_000]
    .filter((count) => count <= sites)
    .map((count) => ({ sites: count, perSite: summary(means(taken.ours, count / BATCH)).median }))
  return { ratio, growth }
}

const means = (values: readonly number[], length: number): readonly number[] =>
  Array.from({ length: Math.floor(values.length / length) }, (_, i) => {
    const stretch = values.slice(i * length, (i + 1) * length)
    return stretch.reduce((sum, value) => sum + value, 0) / length
  })
