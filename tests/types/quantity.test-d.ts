import { describe, expectTypeOf, it } from 'vitest'
import { add, inUnit, quantity, type Mass, type Volume } from '#core/units/quantity'
import { read } from '#core/units/read'

describe('quantities', () => {
  it('a volume is not a mass, and neither is a number', () => {
    expectTypeOf(quantity(1, 'mL')).toEqualTypeOf<Volume>()
    expectTypeOf(quantity(1, 'L')).toEqualTypeOf<Volume>()
    expectTypeOf<Volume>().not.toExtend<Mass>()
    expectTypeOf<Volume>().not.toExtend<number>()
    expectTypeOf<number>().not.toExtend<Volume>()
  })

  it('mL and L do not add up by the plus sign', () => {
    // @ts-expect-error quantities are opaque: use add()
    void (quantity(1, 'mL') + quantity(1, 'L'))
    expectTypeOf(add(quantity(1, 'mL'), quantity(1, 'L'))).toEqualTypeOf<Volume>()
  })

  it('different dimensions do not mix', () => {
    // @ts-expect-error a mass cannot be added to a volume
    add(quantity(1, 'mL'), quantity(1, 'g'))
    // @ts-expect-error a volume has no value in grams
    inUnit(quantity(1, 'mL'), 'g')
    // @ts-expect-error temperatures do not add
    add(quantity(1, 'degC'), quantity(1, 'degC'))
    // @ts-expect-error the entry of a mass is not read as a volume
    read<'volume'>({ value: '1', unit: 'g' }, 'f')
  })
})
