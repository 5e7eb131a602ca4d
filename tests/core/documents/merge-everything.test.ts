import { readFileSync } from 'node:fs'
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compareSites } from '#core/documents/compare-sites'
import { check, decode } from '#core/documents/decode'
import { first, mergeSites, second } from '#core/documents/merge'
import { same } from '#core/documents/same'
import { site as siteSchema } from '#core/documents/site-schema'
import type { MachineOrder, Site, Visit } from '#core/records/index'

const decoded = decode(
  'site',
  readFileSync(new URL('../../fixtures/documents/site-v2-full.json', import.meta.url), 'utf8'),
)
if (!decoded.ok) throw new Error(JSON.stringify(decoded.problem))
/** Holds one of every kind of record a site can hold; a second tank is added below. */
const whole = decoded.value.document.site

type Item = { readonly id: string }
/** Some of the items, each in one of three versions. */
const someOf = <T extends Item>(
  items: readonly T[],
  version: (item: T, number: number) => T,
): fc.Arbitrary<readonly T[]> =>
  fc
    .tuple(
      ...items.map((item) =>
        fc.option(fc.nat(2).map((number) => (number === 0 ? item : version(item, number)))),
      ),
    )
    .map((list) => list.filter((item) => item !== null))

const machines = whole.machines.map((machine) =>
  machine.class === 'conveyor-single-tank' && machine.wash.kind === 'tank'
    ? {
        ...machine,
        class: 'conveyor-multi-tank' as const,
        wash: {
          ...machine.wash,
          upstream: { volume: { value: '60', unit: 'L' as const } },
        },
      }
    : machine,
)
const closing = whole.visits.find((visit) => visit.closing !== null)?.closing ?? null
const amendments = whole.visits.flatMap((visit) => visit.amendments)

/** An open visit may have other words; a closed one differs only in its amendments, as the program keeps it. */
const someVisits: fc.Arbitrary<readonly Visit[]> = fc
  .tuple(
    ...whole.visits.map((visit) =>
      fc
        .option(
          fc.record({
            closed: fc.boolean(),
            notes: fc.constantFrom('', 'a', 'b'),
            amended: fc.uniqueArray(fc.nat(2)),
          }),
        )
        .map((how): Visit | null => {
          if (how === null) return null
          if (!how.closed && visit.closing === null) return { ...visit, notes: how.notes }
          const [amendment] = amendments
          if (amendment === undefined) throw new Error('the fixture has no amendment')
          return {
            ...visit,
            closing: visit.closing ?? closing,
            amendments: how.amended.map((number) => ({
              ...amendment,
              id: `a0000000-0000-4000-8000-00000000000${number}`,
              at: `2025-03-0${3 + (number % 2)}T07:00:00.000Z`,
            })),
          }
        }),
    ),
  )
  .map((list) => list.filter((visit) => visit !== null))

/** What a version may know of the order: nothing, or some of it, moved early or late or never. */
const someOrder: fc.Arbitrary<MachineOrder | null> = fc.option(
  fc.record({
    movedAt: fc.constantFrom(null, '2025-03-01T08:00:00.000Z', '2025-03-02T08:00:00.000Z'),
    ids: fc.shuffledSubarray(machines.map(({ id }) => id)),
    added: fc.shuffledSubarray(machines.map(({ id }) => id)).chain((ids) =>
      fc.tuple(
        ...ids.map((id) =>
          fc.record({
            id: fc.constant(id),
            at: fc.constantFrom('2025-03-03T08:00:00.000Z', '2025-03-04T08:00:00.000Z'),
          }),
        ),
      ),
    ),
  }),
)
const RUNS = { numRuns: Number(process.env['MERGE_RUNS'] ?? 400) }

const someSite: fc.Arbitrary<Site> = fc
  .record({
    name: fc.constantFrom('a', 'b'),
    notes: fc.constantFrom('a', 'b'),
    currency: fc.constantFrom('EUR', 'USD'),
    units: fc.constantFrom('metric' as const, 'us' as const),
    timeZone: fc.constantFrom('Europe/Vienna', 'America/New_York'),
    visitEveryDays: fc.constantFrom('30', null),
    calendar: fc.constantFrom(whole.calendar, { ...whole.calendar, closures: [] }),
    water: fc.constantFrom(whole.water, { ...whole.water, pH: '7.1' }),
    machines: someOf(machines, (machine, number) => ({ ...machine, racksPerDay: `${number}` })).chain(
      (some) => fc.shuffledSubarray([...some], { minLength: some.length }),
    ),
    machineOrder: someOrder,
    visits: someVisits,
    stock: someOf(whole.stock, (item, number) => ({ ...item, fullContainers: `${number}` })),
    snapshots: someOf(whole.snapshots, (item, number) => ({
      ...item,
      products: item.products.map((product) => ({ ...product, name: `version ${number}` })),
      instruments: item.instruments.slice(number),
    })),
    scenarios: someOf(whole.scenarios, (item, number) => ({ ...item, racksPercent: `${number}` })),
    glassChecks: someOf(whole.glassChecks, (item, number) => ({ ...item, seen: [`sign ${number}`] })),
  })
  .map(({ machineOrder, ...parts }) => ({
    ...whole,
    ...parts,
    ...(machineOrder === null ? {} : { machineOrder }),
  }))

const KEYS = [...Object.keys(whole), 'machineOrder'] as readonly (keyof Site)[]
const LISTS = ['machines', 'visits', 'stock', 'snapshots', 'scenarios', 'glassChecks'] as const
const ids = (list: readonly Item[]): readonly string[] => list.map(({ id }) => id).toSorted()
const inOrder = (one: Site): Site => ({
  ...one,
  ...Object.fromEntries(
    LISTS.map((list) => [list, (one[list] as readonly Item[]).toSorted((x, y) => (x.id < y.id ? -1 : 1))]),
  ),
})

describe('two copies of a site with everything a site can hold', () => {
  it('hold every kind of record, or this would prove little', () => {
    fc.assert(
      fc.property(someSite, (one) => {
        expect([...new Set([...Object.keys(one), 'machineOrder'])].toSorted()).toEqual(KEYS.toSorted())
        expect(check({ schema: siteSchema }, one)).toMatchObject({ ok: true })
      }),
      RUNS,
    )
    for (const list of LISTS) expect([list, whole[list].length > 0]).toEqual([list, true])
    expect(machines.some(({ wash }) => wash.kind === 'tank' && wash.upstream !== null)).toBe(true)
  })

  it('give the same whoever starts, in whatever order they meet, and however often', () => {
    fc.assert(
      fc.property(someSite, someSite, someSite, (a, b, c) => {
        const ab = mergeSites(a, b)
        expect(mergeSites(b, a)).toEqual(ab)
        expect(mergeSites(ab, c)).toEqual(mergeSites(a, mergeSites(b, c)))
        expect(mergeSites(a, a)).toEqual(a)
        expect(mergeSites(ab, b)).toEqual(ab)
        expect(mergeSites(a, ab)).toEqual(ab)
      }),
      RUNS,
    )
  })

  it('lose nothing that has an id, whoever is preferred, and hold together as a document', () => {
    fc.assert(
      fc.property(someSite, someSite, fc.constantFrom(first, second, undefined), (a, b, pick) => {
        const merged = mergeSites(a, b, pick)
        for (const list of LISTS)
          expect(ids(merged[list])).toEqual([...new Set([...ids(a[list]), ...ids(b[list])])].toSorted())
        expect(check({ schema: siteSchema }, merged)).toMatchObject({ ok: true })
      }),
      RUNS,
    )
  })

  it('leave every closed visit word for word as it was closed, with the amendments of both', () => {
    fc.assert(
      fc.property(someSite, someSite, fc.constantFrom(first, second, undefined), (a, b, pick) => {
        const merged = mergeSites(a, b, pick)
        for (const closed of [...a.visits, ...b.visits].filter((visit) => visit.closing !== null)) {
          const now = merged.visits.find(({ id }) => id === closed.id)
          expect({ ...now, amendments: [] }).toEqual({ ...closed, amendments: [] })
          expect(now?.amendments).toEqual(expect.arrayContaining([...closed.amendments]))
        }
      }),
      RUNS,
    )
  })

  it('are said to differ exactly when they do, and ask exactly where it matters who is preferred', () => {
    // also where they differ in one part only, whichever it is
    const pair = fc.tuple(someSite, someSite, fc.option(fc.constantFrom(...KEYS))).map(([a, b, key]) => {
      if (key === null) return [a, b] as const
      const { [key]: _mine, ...rest } = a
      return [a, (key in b ? { ...rest, [key]: b[key] } : rest) as Site] as const
    })
    fc.assert(
      fc.property(pair, ([a, b]) => {
        const parts = compareSites(a, b)
        expect(parts.length === 0).toBe(same(inOrder(a), inOrder(b)))
        expect(parts.some(({ asks }) => asks)).toBe(!same(mergeSites(a, b, first), mergeSites(a, b, second)))
      }),
      RUNS,
    )
  })
})
