import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import { site as siteSchema } from '#core/documents/site-schema'
import type { Product, Site } from '#core/records/index'
import { entry } from '#core/units/entry'
import * as library from '#renderer/commands/library.ts'
import * as setup from '#renderer/commands/setup.ts'

const ids = (): (() => string) => {
  let count = 0
  return () => `00000000-0000-4000-8000-${String((count += 1)).padStart(12, '0')}`
}
const next = ids()
const freeze = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null) {
    Object.values(value).forEach(freeze)
    Object.freeze(value)
  }
  return value
}
const empty = freeze(
  setup.newSite({ id: next(), name: 'Fernhill Care Home', timeZone: 'UTC', settings: DEFAULT_SETTINGS }),
)
const aid = freeze(library.newProduct({ id: next(), name: 'Rinse aid', role: 'rinse-aid' }))

const machineOf = (site: Site) => {
  const machine = site.machines[0]
  if (machine === undefined) throw new Error('no machine')
  return machine
}
const pumpOf = (site: Site) => {
  const pump = machineOf(site).pumps[0]
  if (pump === undefined) throw new Error('no pump')
  return pump
}
const usual = (products: readonly Product[] = []): Site =>
  freeze(setup.addUsualMachine(empty, { class: 'door', sanitizing: 'chemical' }, products, next))

describe('a machine set up in one tap', () => {
  it('has the pumps such a machine usually has, and can be saved as it stands', () => {
    const site = usual()
    expect(machineOf(site).pumps.map((pump) => pump.role)).toEqual(['rinse-aid', 'detergent', 'sanitizer'])
    expect(siteSchema.safeParse(site).success).toBe(true)
  })

  it('feeds detergent to the tank and the rest to the final rinse', () => {
    expect(machineOf(usual()).pumps.map((pump) => pump.feeds)).toEqual([
      'final-rinse',
      'wash-tank',
      'final-rinse',
    ])
  })

  it('takes a product only when there is no choice to make', () => {
    expect(pumpOf(usual([aid])).productId).toBe(aid.id)
    const other = library.newProduct({ id: next(), name: 'Another', role: 'rinse-aid' })
    expect(pumpOf(usual([aid, other])).productId).toBeNull()
  })

  it('gets a name nobody has yet', () => {
    const two = setup.addUsualMachine(usual(), { class: 'door', sanitizing: 'hot-water' }, [], next)
    expect(two.machines.map((machine) => machine.name)).toEqual(['Door-type machine', 'Door-type machine 2'])
  })
})

const withSecond = (site: Site, upstream: { volume: null } | null): Site => {
  const machine = machineOf(site)
  if (machine.wash.kind !== 'tank') throw new Error('no tank')
  return setup.setWash(site, machine.id, { ...machine.wash, upstream })
}
const detergentOf = (site: Site) => machineOf(site).pumps[1]

describe('a second tank', () => {
  it('can be fed by a pump, and gives its pumps to the wash tank when it is taken away again', () => {
    const there = withSecond(usual(), { volume: null })
    const id = detergentOf(there)?.id ?? ''
    const fed = setup.changePump(there, machineOf(there).id, id, { feeds: 'upstream-tank' })
    expect(siteSchema.safeParse(fed).success).toBe(true)
    expect(detergentOf(fed)?.feeds).toBe('upstream-tank')
    expect(detergentOf(withSecond(fed, null))?.feeds).toBe('wash-tank')
    const dumped = setup.setWash(fed, machineOf(fed).id, setup.emptyWash('dump-and-refill'))
    expect(detergentOf(dumped)?.feeds).toBe('wash-tank')
  })
})

describe('a window around a target', () => {
  it('reaches 10 % to either side, in plain decimals', () => {
    expect(setup.windowAround('ppm-vv', '250')).toEqual({
      basis: 'ppm-vv',
      low: '225',
      target: '250',
      high: '275',
    })
    expect(setup.windowAround('g-per-L-tank', '2.25')).toMatchObject({ low: '2.025', high: '2.475' })
  })
  it.each(['0', '-1'])('does not exist around %s', (target) => {
    expect(setup.windowAround('ppm-vv', target)).toBeNull()
  })
})

describe('edits of the set-up', () => {
  it('leave the site they came from untouched, and everything they do not name', () => {
    const site = usual()
    const { id } = machineOf(site)
    const pump = pumpOf(site)
    const after = setup.changePump(site, id, pump.id, { doseSeconds: entry('9', 's') })
    expect(pumpOf(after)).toEqual({ ...pump, doseSeconds: entry('9', 's') })
    expect(machineOf(after).pumps.slice(1)).toEqual(machineOf(site).pumps.slice(1))
    expect(after.water).toBe(site.water)
  })

  it('give the same site back when the machine or pump is not there', () => {
    const site = usual()
    const nobody = next()
    const { id } = machineOf(site)
    expect(setup.changeMachine(site, nobody, { name: 'x' })).toBe(site)
    expect(setup.removeMachine(site, nobody)).toBe(site)
    expect(setup.copyMachine(site, nobody, next)).toBe(site)
    expect(setup.changePump(site, id, nobody, { name: 'x' })).toBe(site)
    expect(setup.removePump(site, nobody, pumpOf(site).id)).toBe(site)
    expect(setup.movePump(site, id, pumpOf(site).id, -1)).toBe(site)
  })

  it('copy a machine with fresh ids, without the dates and stops of its pumps', () => {
    let site = usual()
    site = setup.changeTube(site, machineOf(site).id, pumpOf(site).id, { fittedOn: '2026-03-09' })
    const copied = setup.copyMachine(site, machineOf(site).id, next)
    const all = copied.machines.flatMap((machine) => [machine.id, ...machine.pumps.map((pump) => pump.id)])
    expect(new Set(all).size).toBe(all.length)
    expect(copied.machines[1]?.pumps[0]?.tube.fittedOn).toBeNull()
    expect(siteSchema.safeParse(copied).success).toBe(true)
  })

  it('note who stands where when a machine is moved, and only that one is new when it is added', () => {
    const at = '2026-03-09T08:00:00.000Z'
    const one = usual()
    const input = { class: 'door', sanitizing: 'hot-water' } as const
    const two = setup.noteOrder(setup.addUsualMachine(one, input, [], next), one, at)
    const [first, second] = two.machines.map(({ id }) => id)
    if (first === undefined || second === undefined) throw new Error('two machines are needed')
    expect(two.machineOrder).toEqual({ movedAt: null, ids: [first], added: [{ id: second, at }] })
    const moved = setup.noteOrder(setup.moveMachine(two, second, -1), two, at)
    expect(moved.machineOrder).toEqual({ movedAt: at, ids: [second, first], added: [{ id: second, at }] })
    const third = setup.noteOrder(setup.copyMachine(moved, first, next), moved, at)
    expect(third.machineOrder).toMatchObject({ movedAt: at, ids: [second, first] })
    expect(third.machineOrder?.added).toHaveLength(2)
    expect(siteSchema.safeParse(third).success).toBe(true)
    expect(setup.noteOrder(setup.moveMachine(third, second, -1), third, at)).toBe(third)
  })

  it('keep the machines whatever way they are moved', () => {
    const three = ['door', 'undercounter', 'conveyor-single-tank'] as const
    const site = three.reduce<Site>(
      (current, kind) => setup.addUsualMachine(current, { class: kind, sanitizing: 'hot-water' }, [], next),
      empty,
    )
    fc.assert(
      fc.property(
        fc.array(fc.record({ at: fc.nat(2), by: fc.constantFrom(-1 as const, 1 as const) })),
        (moves) => {
          const moved = moves.reduce((current, { at, by }) => {
            const machine = current.machines[at]
            return machine === undefined ? current : setup.moveMachine(current, machine.id, by)
          }, site)
          expect(moved.machines.map(({ id }) => id).toSorted()).toEqual(
            site.machines.map(({ id }) => id).toSorted(),
          )
        },
      ),
    )
  })

  it('keep one season for a month, in the order of the year', () => {
    let site = setup.setSeason(empty, 8, '140')
    site = setup.setSeason(site, 1, '60')
    site = setup.setSeason(site, 8, '150')
    expect(site.calendar.seasons).toEqual([
      { month: 1, percent: '60' },
      { month: 8, percent: '150' },
    ])
    expect(setup.setSeason(site, 1, null).calendar.seasons).toEqual([{ month: 8, percent: '150' }])
  })
})
