import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hazardsOf, releases } from '#core/cautions/incompatible'
import { cautionsOfPlan, productsFor, suits } from '#core/cautions/planned-change'
import { notForPumpWords } from '#core/messages/planned-change-words'
import type { ProductRole, Pump, Scenario, Site } from '#core/records/index'
import { machine, product, pump, site } from '../../contract/sample-site'

const ROLES: readonly ProductRole[] = ['rinse-aid', 'detergent', 'sanitizer', 'delimer', 'other']
const change = (pumpId: string, productId: string | null): Scenario['changes'][number] => ({
  pumpId,
  productId,
  dosePercent: null,
  pricePerContainer: null,
  containerSize: null,
  strengthPercent: null,
})
const house = (...pumps: readonly Pump[]): Site => site({ machines: [machine({ pumps })] })
/** 10 % trade: 10 g of available chlorine in 100 mL, common practice, no source. */
const bleach = product({
  name: 'Chlorine sanitizer',
  role: 'sanitizer',
  hazards: [],
  strength: { kind: 'trade-percent', percent: '10', measuredOn: null },
})
const acidSanitizer = product({ name: 'Acid sanitizer', role: 'sanitizer', hazards: ['acid'] })
const quat = product({
  name: 'Quat sanitizer',
  role: 'sanitizer',
  hazards: [],
  strength: { kind: 'weight-percent', percent: '10', active: 'quat', measuredOn: null },
})
const detergent = product({ name: 'Detergent', role: 'detergent', hazards: ['corrosive', 'alkaline'] })
const rinseAid = product({ name: 'Rinse aid', role: 'rinse-aid', hazards: ['acid'] })

describe('what a what-if offers for a pump', () => {
  it('is what does the work of the pump, and what has no role of its own behind it; never another work', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ROLES), fc.array(fc.constantFrom(...ROLES)), (role, roles) => {
        const library = roles.map((one) => product({ role: one }))
        const offered = productsFor({ role }, library)
        const firstOther = offered.findIndex((one) => one.role !== role)
        if (firstOther >= 0) expect(offered.slice(firstOther).every((one) => one.role !== role)).toBe(true)
        expect(new Set(offered)).toEqual(new Set(library.filter((one) => suits({ role }, one))))
        if (role === 'other') expect(offered).toHaveLength(library.length)
        else expect(offered.every((one) => one.role === role || one.role === 'other')).toBe(true)
      }),
    )
  })

  it('never puts a rinse aid where detergent is fed, and says why an older what-if that does is no proposal', () => {
    expect(productsFor({ role: 'detergent' }, [rinseAid, detergent])).toEqual([detergent])
    expect(notForPumpWords({ role: 'detergent' }, rinseAid)).toMatch(
      /feeds detergent, and Rinse aid is rinse aid/u,
    )
    expect(notForPumpWords({ role: 'detergent' }, detergent)).toBeNull()
  })
})

// Chlorine with acid gives chlorine, with ammonia or amines chloramines: chemistry from memory, as in the caution itself
describe('what a planned product would meet', () => {
  const sanitizerPump = pump({ role: 'sanitizer', productId: bleach.id })
  const detergentPump = pump({ role: 'detergent', productId: detergent.id })
  const rinsePump = pump({ role: 'rinse-aid', productId: null })
  const library = [bleach, acidSanitizer, quat, detergent, rinseAid]

  it.each([
    ['an acid in the tube chlorine was in', acidSanitizer],
    ['quat in the tube chlorine was in', quat],
  ])('is told for %s, though chlorine is gone by then', (_, next) => {
    const [caution, ...more] = cautionsOfPlan(house(sanitizerPump, detergentPump), library, {
      changes: [change(sanitizerPump.id, next.id)],
    })
    expect(more).toEqual([])
    expect(caution).toMatchObject({ id: 'never-mix', severity: 'stop', productId: next.id })
    expect(caution?.partners.map(({ name }) => name)).toEqual([bleach.name])
  })

  it('is told for two pumps of one plan, neither of which meets anything there today', () => {
    const empty = { ...sanitizerPump, productId: null }
    const both = { changes: [change(empty.id, bleach.id), change(rinsePump.id, rinseAid.id)] }
    const cautions = cautionsOfPlan(house(empty, rinsePump), library, both)
    expect(cautions.map(({ productId }) => productId)).toEqual([bleach.id, rinseAid.id])
  })

  it('is not told where nothing changes, where only a dose does, or where no rule speaks', () => {
    const here = house(sanitizerPump, detergentPump)
    for (const changes of [
      [],
      [change(sanitizerPump.id, null)],
      [change(sanitizerPump.id, bleach.id)],
      [change(detergentPump.id, product({ role: 'detergent' }).id)],
    ])
      expect(cautionsOfPlan(here, library, { changes })).toEqual([])
  })

  it('is told exactly when two products of the plan and of today must not meet', () => {
    fc.assert(
      fc.property(
        fc.option(fc.constantFrom(...library)),
        fc.constantFrom(...library),
        fc.constantFrom(...library),
        (first, other, next) => {
          const changed = pump({ role: 'other', productId: first?.id ?? null })
          const still = pump({ role: 'other', productId: other.id })
          const cautions = cautionsOfPlan(house(changed, still), library, {
            changes: [change(changed.id, next.id)],
          })
          const meets = [first, other].some(
            (one) => one !== null && one !== next && releases(one, next) !== null,
          )
          expect(cautions.length > 0).toBe(next !== first && meets)
        },
      ),
    )
    expect(hazardsOf(bleach).has('chlorine')).toBe(true)
  })
})
