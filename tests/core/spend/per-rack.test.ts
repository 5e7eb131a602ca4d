import { describe, expect, it } from 'vitest'
import type { Machine } from '#core/records/index'
import { productDensity } from '#core/drawdown/product-density'
import { initialCharge } from '#core/spend/charges'
import { perRack } from '#core/spend/per-rack'
import { aMachine, aProduct, aPump, aSetting, good, id } from './build'

const product = aProduct({ density: { value: '1.2', unit: 'g/mL' } })
const probe = aPump({
  control: 'probe',
  feeds: 'wash-tank',
  window: { basis: 'g-per-L-tank', low: '1.6', target: '2', high: '2.4' },
})
const machine = aMachine({
  rinse: { kind: 'measured', perRack: { value: '3.0', unit: 'L' }, spread: null },
})
const held = (over: Partial<Machine> = {}) =>
  good(perRack(probe, { ...machine, ...over }, product, aSetting(probe.id, 500, 10)).dose)

/**
 * What leaves a tank held at 2 g/L in 3.0 L of water a rack is 6 g, 5 mL at 1.2 g/mL: the mass balance of a well-mixed
 * tank, worked by hand. The doubts about rinse water are those of the dose per rack (measured 2 %, data plate 7.3 %).
 */
describe('product per rack where a probe holds the tank', () => {
  it('is what the overflow carries away, whatever the pump was found to give', () => {
    const dose = held()
    expect(dose.value).toBeCloseTo(5, 9)
    expect(dose.standard).toBeCloseTo(0.1, 9)
    expect(dose.predicted).toBe(true)
    expect(perRack(probe, machine, product, null).doseFrom).toBe('target')
  })

  it('is as doubtful as the water is: a data plate more than a catch', () => {
    const rinse = { kind: 'data-plate', perRack: { value: '3.0', unit: 'L' }, spread: null } as const
    expect(held({ rinse }).standard / 5).toBeCloseTo(0.073, 9)
    expect(held({ rinse: { ...rinse, spread: '4' } }).standard / 5).toBeCloseTo(0.04, 9)
  })

  it('leaves out what ware and vapour carry off: 2.7 L of 3.0 L overflow take 4.5 mL', () => {
    if (machine.wash.kind !== 'tank') throw new Error('the machine has a tank')
    const wash = { ...machine.wash, carriedOut: { value: '0.3', unit: 'L' as const } }
    expect(held({ wash }).value).toBeCloseTo(4.5, 9)
  })

  it('leaves out what comes over from a second tank at 0.5 g/L: 1.5 g/L x 3.0 L / 1.2 = 3.75 mL', () => {
    if (machine.wash.kind !== 'tank') throw new Error('the machine has a tank')
    const above = aPump({
      id: id(12),
      feeds: 'upstream-tank',
      window: { basis: 'g-per-L-tank', low: '0.4', target: '0.5', high: '0.6' },
    })
    const wash = { ...machine.wash, upstream: { volume: { value: '20', unit: 'L' as const } } }
    expect(held({ wash, pumps: [probe, above] }).value).toBeCloseTo(3.75, 9)
  })

  it('refuses a density that the dose and the tank refuse: no money is made from a slip of the pen', () => {
    const slip = { ...product, density: { value: '1.8', unit: 'g/mL' as const } }
    const refused = {
      ok: false,
      problem: { code: 'number-out-of-range', field: 'product.density', high: 1.6 },
    }
    expect(productDensity(slip)).toMatchObject(refused)
    expect(perRack(probe, machine, slip, null).dose).toMatchObject(refused)
    if (machine.wash.kind !== 'tank') throw new Error('the machine has a tank')
    const wash = { ...machine.wash, volume: { value: '40', unit: 'L' as const } }
    const charge = initialCharge({ ...probe, initialChargeSeconds: null }, { ...machine, wash }, slip, null)
    expect(charge).toMatchObject(refused)
  })

  it('says what is missing instead: water, density', () => {
    expect(perRack(probe, { ...machine, rinse: null }, product, null).dose).toMatchObject({
      problem: { needed: 'rinse-volume' },
    })
    expect(perRack(probe, machine, { ...product, density: null }, null).dose).toMatchObject({
      problem: { needed: 'density' },
    })
  })
})
