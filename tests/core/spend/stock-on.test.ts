import { describe, expect, it } from 'vitest'
import type { StockMovement } from '#core/records/index'
import { siteSpend } from '#core/spend/site-spend'
import { aMachine, aMovement, aProduct, aPump, aSetting, aSite, good, id } from './build'

// 2 s a rack at 30 mL/min is 1 mL; 100 racks a day draw 0.1 L a day
const dose = aSetting(id(11), 30, 2)
const count = (litres: string): StockMovement =>
  aMovement({
    id: id(91),
    on: '2026-03-01',
    kind: 'count',
    fullContainers: '0',
    part: { value: litres, unit: 'L' },
  })
const delivery = (on: string, n = 92): StockMovement =>
  aMovement({ id: id(n), on, kind: 'delivery', fullContainers: '1', part: null })

const shelf = (stock: readonly StockMovement[]) =>
  good(
    siteSpend({
      site: aSite({ stock, machines: [aMachine({ racksPerDay: '100', pumps: [aPump()] })] }),
      products: [aProduct()],
      asOf: '2026-03-15',
      serviceLevel: '95',
      doses: [
        {
          visitId: id(1),
          pumpId: id(11),
          on: '2026-01-01',
          found: dose.dose,
          left: dose.dose,
          flowLeft: dose.flow,
          changed: false,
          sameInstrument: true,
        },
      ],
    }).products[0]?.stock,
  ).value

describe('what should be on the shelf', () => {
  it('is the count and what came, less what the pumps drew', () => {
    // 5 L, 14 days at 0.1 L, 10 L
    expect(shelf([count('5')])).toBeCloseTo(3.6, 9)
    expect(shelf([count('5'), delivery('2026-03-10')])).toBeCloseTo(13.6, 9)
  })

  it('holds all of a delivery that comes today to a shelf that was used up', () => {
    expect(shelf([count('0.5')])).toBe(0)
    expect(shelf([count('0.5'), delivery('2026-03-15')])).toBeCloseTo(10, 9)
  })

  it('takes off a later delivery only what was drawn since it came, each time the shelf was empty', () => {
    // used up by 6 March; 10 L on the 10th, 5 days at 0.1 L
    expect(shelf([count('0.5'), delivery('2026-03-10')])).toBeCloseTo(9.5, 9)
    expect(shelf([count('0.5'), delivery('2026-03-12', 93), delivery('2026-03-10')])).toBeCloseTo(19.5, 9)
  })
})
