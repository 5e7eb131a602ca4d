import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compareSites } from '#core/documents/compare-sites'
import { first, mergeSites, second } from '#core/documents/merge'
import { same } from '#core/documents/same'
import type { Amendment, Site, Visit } from '#core/records/index'
import { moveMachine, noteOrder } from '#renderer/commands/setup/machines.ts'
import { machine, pump, site, siteWithClosedVisit, visit } from '../../contract/sample-site'

const base = siteWithClosedVisit().site
const [closedVisit] = base.visits
const [someMachine] = base.machines
if (closedVisit === undefined || someMachine === undefined) throw new Error('the sample site lacks a part')

const id = (kind: number, number: number): string =>
  `${kind.toString().padStart(8, '0')}-0000-4000-8000-${number.toString().padStart(12, '0')}`
const word = fc.constantFrom('', 'a', 'b', 'c')

/** Few ids and few contents, so that copies often share a thing and often differ in it. */
const amendment: fc.Arbitrary<Amendment> = fc.record({
  id: fc.nat(3).map((number) => id(9, number)),
  at: fc.constantFrom('2025-03-02T08:00:00.000Z', '2025-03-03T08:00:00.000Z'),
  by: fc.constant('A. Rep'),
  reason: word,
  text: word,
})
const byId = <T extends { readonly id: string }>(items: readonly T[]): readonly T[] => [
  ...new Map(items.map((item) => [item.id, item])).values(),
]
const someVisit: fc.Arbitrary<Visit> = fc
  .record({
    number: fc.nat(4),
    closed: fc.boolean(),
    notes: word,
    amendments: fc.array(amendment, { maxLength: 3 }),
  })
  .map(({ number, closed, notes, amendments }) => ({
    ...visit(id(2, 1), null),
    id: id(1, number),
    startedAt: `2025-03-0${1 + (number % 3)}T09:00:00.000Z`,
    work: [],
    notes,
    closing: closed ? closedVisit.closing : null,
    amendments: closed ? byId(amendments) : [],
  }))
const someMachines = fc
  .uniqueArray(fc.record({ number: fc.nat(3), name: word }), {
    maxLength: 4,
    selector: ({ number }) => number,
  })
  .map((list) => list.map(({ number, name }) => ({ ...someMachine, id: id(2, number), name, pumps: [] })))
const someStock = fc
  .uniqueArray(fc.record({ number: fc.nat(3), reference: word }), {
    maxLength: 4,
    selector: ({ number }) => number,
  })
  .map((list) =>
    list.map(({ number, reference }) => ({
      id: id(3, number),
      on: `2025-03-0${1 + (number % 2)}`,
      productId: id(4, 0),
      kind: 'count' as const,
      fullContainers: '3',
      containerSize: { value: '5', unit: 'L' as const },
      part: null,
      tare: null,
      reference,
      visitId: null,
    })),
  )
const someSite: fc.Arbitrary<Site> = fc
  .record({
    name: word,
    notes: word,
    visits: fc.array(someVisit, { maxLength: 5 }).map(byId),
    machines: someMachines,
    stock: someStock,
  })
  .map((parts) => ({ ...base, snapshots: [], ...parts }))

const ids = (list: readonly { readonly id: string }[]): readonly string[] =>
  list.map((item) => item.id).toSorted()

/** The closed visit with corrections: their numbers, and the days of March they were made on. */
const dated = (...days: readonly (readonly [number, number])[]): Site => ({
  ...base,
  visits: [
    {
      ...closedVisit,
      amendments: days.map(([number, day]) => ({
        id: id(9, number),
        at: `2025-03-0${day}T08:00:00.000Z`,
        by: 'A. Rep',
        reason: '',
        text: '',
      })),
    },
  ],
})

const standing = (one: Site): readonly string[] => one.machines.map((item) => item.id)

/** Lists that were put together differ from hand-made ones in order only as far as merging says. */
describe('bringing copies of one site together', () => {
  it('gives the same whichever side starts', () => {
    fc.assert(
      fc.property(someSite, someSite, (a, b) => {
        expect(mergeSites(a, b)).toEqual(mergeSites(b, a))
      }),
      { numRuns: 500 },
    )
  })

  it('gives the same in whichever order three copies meet', () => {
    fc.assert(
      fc.property(someSite, someSite, someSite, (a, b, c) => {
        expect(mergeSites(mergeSites(a, b), c)).toEqual(mergeSites(a, mergeSites(b, c)))
      }),
      { numRuns: 1000 },
    )
  })

  it('gives the same though two copies date one correction differently', () => {
    const [a, b, c] = [dated(), dated([3, 2], [2, 2]), dated([2, 3], [3, 2])]
    const whole = mergeSites(a, mergeSites(b, c))
    expect(whole).toEqual(dated([3, 2], [2, 3]))
    expect(mergeSites(mergeSites(a, b), c)).toEqual(whole)
    expect(mergeSites(mergeSites(a, c), b)).toEqual(whole)
  })

  it('changes nothing when a copy meets itself, or meets again what it has already taken in', () => {
    fc.assert(
      fc.property(someSite, someSite, (a, b) => {
        expect(mergeSites(a, a)).toEqual(a)
        const both = mergeSites(a, b)
        expect(mergeSites(both, a)).toEqual(both)
        expect(mergeSites(both, b)).toEqual(both)
      }),
      { numRuns: 500 },
    )
  })

  it('loses no visit, no amendment and no count, whoever is preferred', () => {
    fc.assert(
      fc.property(someSite, someSite, fc.constantFrom(first, second, undefined), (a, b, pick) => {
        const merged = mergeSites(a, b, pick)
        const union = (of: (site: Site) => readonly { readonly id: string }[]): readonly string[] =>
          [...new Set([...ids(of(a)), ...ids(of(b))])].toSorted()
        expect(ids(merged.visits)).toEqual(union((one) => one.visits))
        expect(ids(merged.stock)).toEqual(union((one) => one.stock))
        expect(ids(merged.machines)).toEqual(union((one) => one.machines))
        for (const visit of merged.visits)
          for (const side of [a, b]) {
            const theirs = side.visits.find((one) => one.id === visit.id)
            if (theirs === undefined || theirs.closing === null) continue
            expect(visit.closing).not.toBeNull()
            expect(ids(visit.amendments)).toEqual(expect.arrayContaining([...ids(theirs.amendments)]))
          }
      }),
      { numRuns: 500 },
    )
  })

  it('takes a closed visit over the same visit still open, whichever side has it', () => {
    const open = { ...closedVisit, closing: null, setupId: null, notes: 'still at it' }
    const mine = { ...base, visits: [open] }
    expect(mergeSites(mine, base, first).visits).toEqual([closedVisit])
    expect(mergeSites(base, mine, second).visits).toEqual([closedVisit])
    expect(compareSites(mine, base)).toMatchObject([{ what: 'visit', state: 'differs', asks: false }])
  })

  it('keeps the order a person gave the machines while both sides agree on it', () => {
    const machines = [machine({ id: id(2, 9) }), machine({ id: id(2, 1) })]
    const a = { ...base, machines }
    const b = { ...base, machines, notes: 'other' }
    expect(mergeSites(a, b).machines).toEqual(machines)
  })

  describe('of machines', () => {
    const ids = ['9', '5', '7', '1'] as const
    const [bar, dish, glass, pots] = ids.map((digit) => machine({ id: id(2, Number(digit)), pumps: [] }))
    if (bar === undefined || dish === undefined || glass === undefined || pots === undefined)
      throw new Error('four machines are needed')
    const early = '2025-03-02T08:00:00.000Z'
    const late = '2025-03-03T08:00:00.000Z'
    const start: Site = { ...base, machines: [bar, dish] }
    const adds = (one: Site, item: typeof bar, at: string): Site =>
      noteOrder({ ...one, machines: [...one.machines, item] }, one, at)
    const moves = (one: Site, item: typeof bar, by: -1 | 1, at: string): Site =>
      noteOrder(moveMachine(one, item.id, by), one, at)

    it('keeps the order of a move when the other side adds one, whichever came first', () => {
      for (const [moved, added] of [
        [early, late],
        [late, early],
      ] as const) {
        const mine = moves(start, dish, -1, moved)
        const theirs = adds(start, glass, added)
        for (const merged of [mergeSites(mine, theirs), mergeSites(theirs, mine, first)])
          expect(standing(merged)).toEqual([dish.id, bar.id, glass.id])
      }
    })

    it('keeps the order they were entered in when each side adds one, the earlier first', () => {
      const mine = adds(start, pots, late)
      const theirs = adds(start, glass, early)
      for (const merged of [mergeSites(mine, theirs), mergeSites(theirs, mine)])
        expect(standing(merged)).toEqual([bar.id, dish.id, glass.id, pots.id])
    })

    it('takes the later of two moves', () => {
      const three = adds(start, glass, early)
      const mine = moves(three, glass, -1, early)
      const theirs = moves(three, dish, -1, late)
      for (const merged of [mergeSites(mine, theirs), mergeSites(theirs, mine, first)])
        expect(standing(merged)).toEqual([dish.id, bar.id, glass.id])
    })

    it('asks nobody about it, and says that it differs', () => {
      expect(compareSites(start, moves(start, dish, -1, early))).toEqual([
        {
          place: 'machineOrder',
          what: 'site',
          name: 'order of the machines',
          state: 'differs',
          changed: [],
          asks: false,
        },
      ])
    })
  })

  it('does not change what it was given', () => {
    const deep = <T>(value: T): T => {
      if (typeof value === 'object' && value !== null) Object.values(value).forEach(deep)
      return Object.freeze(value)
    }
    fc.assert(
      fc.property(someSite, someSite, (a, b) => {
        mergeSites(deep(a), deep(b))
      }),
      { numRuns: 50 },
    )
  })
})

const sorted = (one: Site): Site => ({
  ...one,
  machines: [...one.machines].toSorted((x, y) => (x.id < y.id ? -1 : 1)),
  visits: [...one.visits].toSorted((x, y) => (x.id < y.id ? -1 : 1)),
  stock: [...one.stock].toSorted((x, y) => (x.id < y.id ? -1 : 1)),
})

describe('comparing two copies of one site', () => {
  it('finds nothing exactly when they hold the same', () => {
    fc.assert(
      fc.property(someSite, someSite, (a, b) => {
        expect(compareSites(a, a)).toEqual([])
        expect(compareSites(a, b).length === 0).toBe(same(sorted(a), sorted(b)))
      }),
      { numRuns: 500 },
    )
  })

  it('asks exactly where a merge would come out differently for mine and theirs', () => {
    fc.assert(
      fc.property(someSite, someSite, (a, b) => {
        const asks = compareSites(a, b).some((part) => part.asks)
        const amendmentsDiffer = a.visits.some((visit) =>
          visit.amendments.some((one) =>
            b.visits.some((other) =>
              other.amendments.some((theirs) => theirs.id === one.id && !same(theirs, one)),
            ),
          ),
        )
        if (amendmentsDiffer) return
        expect(asks).toBe(!same(mergeSites(a, b, first), mergeSites(a, b, second)))
      }),
      { numRuns: 1000 },
    )
  })

  it('names each part, its kind and what it is called', () => {
    const a = site({ machines: [machine({ name: 'Bar', pumps: [pump()] })], notes: 'a' })
    const b = { ...a, notes: 'b', machines: [], water: { ...a.water, pH: '8.0' } }
    expect(compareSites(a, b)).toEqual([
      { place: 'notes', what: 'site', name: 'notes', state: 'differs', changed: [], asks: true },
      { place: 'water', what: 'water', name: 'water', state: 'differs', changed: ['pH'], asks: true },
      {
        place: `machines.${a.machines[0]?.id}`,
        what: 'machine',
        name: 'Bar',
        state: 'only-mine',
        changed: [],
        asks: false,
      },
    ])
  })
})
