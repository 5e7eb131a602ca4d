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
  machine.pumps.forEach((pump, index) => {
    const product = products[index]
    const facts = { productId: product?.id ?? null, doseSeconds: entry('5', 's') }
    site = setup.changePump(site, machine.id, pump.id, facts)
    site = setup.setWindow(site, machine.id, pump.id, setup.windowAround(setup.usualBasis(pump.role), '2'))
  })
  return site
}

describe('what is still to be entered', () => {
  it('is asked for pump by pump on a fresh machine', () => {
    const gaps = texts(bare, [])
    for (const pump of ['Rinse aid', 'Detergent', 'Sanitizer'])
      expect(gaps.filter((gap) => gap.startsWith(pump))).toHaveLength(3)
    expect(gaps.some((gap) => gap.includes('racks per day'))).toBe(true)
  })

  it('names the product facts the chosen basis needs: density for grams, strength for active substance', () => {
    const all = [aid, detergent, sanitizer]
    expect(texts(filled(all), all)).toEqual([
      'Detergent: the density of Detergent',
      'Sanitizer: the strength of Sanitizer',
    ])
    const known = [
      aid,
      { ...detergent, density: entry('1.2', 'g/mL') },
      { ...sanitizer, strength: { kind: 'trade-percent', percent: '9.5', measuredOn: null } },
    ] as const
    expect(texts(filled(known), known)).toEqual([])
  })

  it('asks for the rinse water once a window needs it', () => {
    const all = [aid, detergent, sanitizer]
    const site = filled(all)
    const dry = setup.setRinse(site, site.machines[0]?.id ?? '', null)
    expect(texts(dry, all)[0]).toMatch(/fresh rinse water per rack/u)
  })

  it('says when a product was taken out of the library', () => {
    expect(texts(filled([aid, detergent, sanitizer]), [detergent, sanitizer])[0]).toBe(
      'Rinse aid: which product it doses',
    )
  })
})
