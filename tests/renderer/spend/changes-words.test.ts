import { describe, expect, it } from 'vitest'
import type { ChangeCause } from '#core/spend/changes-since'
import { Decimal } from '#core/units/decimal'
import { changesFinding } from '#renderer/screens/spend/changes-words.ts'

const found = (before: string, now: string, steps: Partial<Record<ChangeCause, string>>) =>
  changesFinding(
    {
      since: '2025-11-25',
      before: new Decimal(before),
      now: new Decimal(now),
      steps: (['racks', 'dose', 'price', 'product'] as const).map((cause) => ({
        cause,
        change: new Decimal(steps[cause] ?? '0'),
      })),
    },
    '25 Nov 2025',
    {
      money: (amount) => `${amount.toFixed(2)} EUR`,
      signed: (amount) => `${amount.lt(0) ? '−' : '+'}${amount.abs().toFixed(2)}`,
    },
  )

describe('the sentence on what moved the cost', () => {
  it('never gives a fall as the reason of a rise: what rose comes first', () => {
    expect(found('44.57', '45.42', { racks: '1.17', dose: '-2.48', price: '2.16' })).toBe(
      'A month costs 0.85 EUR more than on 25 Nov 2025: price +2.16, racks +1.17, dose −2.48.',
    )
    expect(found('169.70', '158.88', { racks: '-0.14', dose: '-10.68' })).toBe(
      'A month costs 10.82 EUR less than on 25 Nov 2025: dose −10.68, racks −0.14.',
    )
  })

  it('says so when nothing came of it', () => {
    expect(found('44.57', '44.57', { racks: '1', dose: '-1' })).toBe(
      'A month costs what it did on 25 Nov 2025.',
    )
  })
})
