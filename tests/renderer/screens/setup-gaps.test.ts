import { describe, expect, it } from 'vitest'
import type { Product, Site } from '#core/records/index'
import { entry } from '#core/units/entry'
import { newProduct } from '#renderer/commands/library/products.ts'
import * as setup from '#renderer/commands/setup.ts'
import { setupGaps } from '#renderer/screens/setup/setup-gaps.ts'

let count = 0
const next = (): string => `00000000-0000-4000-8000-${String((count += 1)).padStart(12, '0')}`
const bare = setup.addUsualMachine(
  setup.newSite({
    id: next(),
    name: 'Site',
    timeZone: 'UTC',
    settings: { currency: 'EUR', units: 'metric' },
  }),
  { class: 'door', sanitizing: 'chemical' },
  [],
  next,
)
const [aid, detergent, sanitizer] = [
  newProduct({ id: next(), name: 'Aid', role: 'rinse-aid' }),
  newProduct({ id: next(), name: 'Detergent', role: 'detergent' }),
  newProduct({ id: next(), name: 'Sanitizer', role: 'sanitizer' }),
] as const
const texts = (site: Site, products: readonly Product[]): readonly string[] =>
  setupGaps(site, products).map((gap) => gap.text)

/** The set-up with everything a visit needs, but for the product facts given. */
function filled(products: readonly Product[]): Site {
  const machine = bare.machines[0]
  if (machine === undefined) throw new Error('no machine')
  let site = setup.changeMachine(bare, machine.id, { racksPerDay: '100' })
  site = setup.setRinse(site, machine.id, { kind: 'measured', perRack: entry('3', 'L'), spread: null })
  if (machine.wash.kind !== 'tank') throw new Error('no tank')
  site = setup.setWash(site, machine.id, { ...machine.wash, volume: entry('40', 'L') })
  machine.pumps.forEach((pump, index) => {
    const product = products[index]
    const facts = { productId: product?.id ?? null, doseSeconds: entry('5', 's') }
    site = setup.changePump(site, machine.id, pump.id, facts)
    site = setup.setWindow(site, machine.id, pump.id, setup.windowAround(setup.usualBasis(pump.role), '2'))
  })
  return site
}

const needed = (site: Site, products: readonly Product[]): readonly string[] =>
  setupGaps(site, products)
    .filter((gap) => gap.for === 'dose')
    .map((gap) => gap.text)

describe('what is still to be entered', () => {
  it('is asked for pump by pump on a fresh machine', () => {
    const gaps = texts(bare, [])
    for (const pump of ['Rinse aid', 'Detergent', 'Sanitizer'])
      expect(gaps.filter((gap) => gap.startsWith(pump))).toHaveLength(3)
    expect(gaps.some((gap) => gap.includes('racks per day'))).toBe(true)
  })

  it('names rinse water and tank before any target is entered, and says what each keeps from being shown', () => {
    const gaps = setupGaps(bare, [])
    const rinse = gaps.find((gap) => gap.text.includes('fresh rinse water per rack'))
    expect(rinse?.without).toMatch(/no strength in the rinse, nor in the tank/u)
    expect(gaps.find((gap) => gap.text.includes('tank holds'))?.without).toMatch(/no initial charge/u)
    for (const gap of gaps) expect(gap.without).toMatch(/^(?:no|not|nothing)\b/u)
  })

  it('names the product facts the basis of a pump needs: density for grams, strength for active substance', () => {
    const all = [aid, detergent, sanitizer]
    const facts = ['Detergent: the density of Detergent', 'Sanitizer: the strength of Sanitizer']
    expect(needed(filled(all), all)).toEqual(facts)
    const known = [
      aid,
      { ...detergent, density: entry('1.2', 'g/mL') },
      { ...sanitizer, strength: { kind: 'trade-percent', percent: '9.5', measuredOn: null } },
    ] as const
    expect(needed(filled(known), known)).toEqual([])
  })

  it('asks for those facts by the role of a pump that has no target yet, on the page of the product', () => {
    const all = [aid, detergent, sanitizer]
    const site = filled(all)
    const untargeted = site.machines
      .flatMap((machine) => machine.pumps.map((pump) => ({ machine, pump })))
      .reduce((now, { machine, pump }) => setup.setWindow(now, machine.id, pump.id, null), site)
    const gaps = setupGaps(untargeted, all)
    expect(gaps.find((gap) => gap.text.includes('density'))?.productId).toBe(detergent.id)
    expect(gaps.find((gap) => gap.text.includes('the strength'))?.productId).toBe(sanitizer.id)
  })

  it('asks for rinse water of a machine once, and for the price of a product once, apart from what a dose needs', () => {
    const all = [aid, detergent, sanitizer]
    const site = filled(all)
    const dry = setup.setRinse(site, site.machines[0]?.id ?? '', null)
    expect(texts(dry, all).filter((text) => /fresh rinse water per rack/u.test(text))).toHaveLength(1)
    const costs = setupGaps(site, all).filter((gap) => gap.for === 'cost')
    expect(costs.map((gap) => gap.productId)).toEqual(all.map((product) => product.id))
    const priced = { from: '2026-01-01', price: '20', currency: 'EUR', containerSize: entry('5', 'L') }
    expect(
      setupGaps(
        site,
        all.map((one) => ({ ...one, prices: [priced] })),
      ).map((gap) => gap.for),
    ).not.toContain('cost')
  })

  it('says when a product was taken out of the library', () => {
    expect(texts(filled([aid, detergent, sanitizer]), [detergent, sanitizer])[0]).toBe(
      'Rinse aid: which product it doses',
    )
  })

  it('asks for no seconds per rack of a detergent pump whose probe holds the strength, and asks again without one', () => {
    const machine = bare.machines[0]
    const pump = machine?.pumps.find((one) => one.role === 'detergent')
    if (machine === undefined || pump === undefined) throw new Error('no detergent pump')
    const asked = (site: Site): boolean =>
      setupGaps(site, []).some((gap) => gap.fieldId === `pump-${pump.id}-seconds`)
    const probed = setup.changePump(bare, machine.id, pump.id, { control: 'probe' })
    expect(asked(bare)).toBe(true)
    expect(asked(probed)).toBe(false)
    // a dose asked for in mL per rack is judged by the seconds, probe or not
    expect(asked(setup.setWindow(probed, machine.id, pump.id, setup.windowAround('mL-per-rack', '9')))).toBe(
      true,
    )
  })
})
