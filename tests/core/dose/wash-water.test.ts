import { describe, expect, it } from 'vitest'
import { doseContext, onBasis } from '#core/dose/on-basis'
import { requiredDose } from '#core/dose/required-dose'
import { exactly } from '#core/statistics/make-estimate'
import { entry } from '#core/units/entry'
import { machine, product } from '#tests/support/make-site'
import { codeOf, good } from '#tests/support/outcomes'

const detergent = product({ density: entry('1.2', 'g/mL') })
const rinse = { kind: 'measured', perRack: entry('3', 'L'), spread: '0' } as const
const tank = {
  kind: 'tank',
  volume: entry('40', 'L'),
  drainAndFillsPerDay: '1',
  closure: 'continuous',
  carriedOut: null,
  upstream: null,
  feeding: 'with-rinse',
} as const
const intoTank = { feeds: 'wash-tank', productId: null } as const
const five = good(exactly(5, 'mL/rack'))
const inTank = (wash: Parameters<typeof machine>[0]): number =>
  good(onBasis('g-per-L-tank', five, doseContext(machine({ rinse, ...wash }), detergent, intoTank))).value

describe('the strength in a wash tank is held against the water that leaves it', () => {
  it('6 g into 3.0 L of rinse settles at 2.000 g/L, and at 2.1053 g/L when 0.15 L is carried out', () => {
    // Worked example of the stirred-tank balance, m / (r - e): derived, 6 / 2.85 = 2.10526.
    expect(inTank({ wash: tank })).toBeCloseTo(2, 12)
    expect(inTank({ wash: { ...tank, carriedOut: entry('0.15', 'L') } })).toBeCloseTo(2.1053, 4)
  })

  it('a dump-and-refill machine is held against its fill, and against the rinse where that is the next wash', () => {
    const dump = { kind: 'dump-and-refill', heel: entry('0.6', 'L'), fill: null } as const
    expect(inTank({ wash: dump })).toBeCloseTo(2, 12)
    expect(inTank({ wash: { ...dump, fill: entry('4', 'L') } })).toBeCloseTo(1.5, 12)
  })

  it('the dose asked for is the inverse of the strength it gives', () => {
    const context = doseContext(
      machine({ rinse, wash: { ...tank, carriedOut: entry('0.15', 'L') } }),
      detergent,
      intoTank,
    )
    const dose = good(requiredDose('g-per-L-tank', 2, context))
    expect(good(onBasis('g-per-L-tank', good(exactly(dose, 'mL/rack')), context)).value).toBeCloseTo(2, 12)
  })

  it('says so when everything the rinse brings is carried out', () => {
    const context = doseContext(
      machine({ rinse, wash: { ...tank, carriedOut: entry('3', 'L') } }),
      detergent,
      intoTank,
    )
    expect(codeOf(onBasis('g-per-L-tank', five, context))).toBe('cannot-compute')
  })
})
