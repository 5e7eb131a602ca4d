import { describe, expect, it } from 'vitest'
import type { Pump, Scenario } from '#core/records/index'
import type { SpendDesk } from '#renderer/screens/spend/spend-desk.svelte.ts'
import { proposalWords } from '#renderer/screens/spend/what-if/proposal-words.ts'
import { aPump, id } from '#tests/core/spend/build'

const names = new Map([
  [id(1), 'Old detergent'],
  [id(2), 'New detergent'],
])

/** What a quote says of one pump whose product is changed, and what else of it. */
const quoted = (change: Partial<Scenario['changes'][number]>, over: Partial<Pump> = {}): string => {
  const pump = aPump({ name: 'Detergent pump', ...over })
  const desk = {
    sign: 'point',
    currency: 'EUR',
    pump: () => ({ pump }),
    product: () => null,
    productName: (product: string) => names.get(product) ?? '',
  } as unknown as SpendDesk
  const none = { dosePercent: null, pricePerContainer: null, containerSize: null, strengthPercent: null }
  return proposalWords(desk, {
    id: id(80),
    name: 'Try',
    racksPercent: null,
    rinseVolumePercent: null,
    changes: [{ pumpId: pump.id, productId: id(2), ...none, ...change }],
  }).join(' ')
}

describe('a quote for another product', () => {
  it('says that it is costed at the same volume per rack', () => {
    expect(quoted({})).toBe('Detergent pump: New detergent instead of Old detergent at the same mL per rack.')
    expect(quoted({ dosePercent: '100' })).toContain('at the same mL per rack')
  })

  it('does not say so where another dose or strength is asked for, or a probe feeds what the tank needs', () => {
    for (const words of [
      quoted({ dosePercent: '80' }),
      quoted({ strengthPercent: '20' }),
      quoted({}, { control: 'probe' }),
    ])
      expect(words).not.toContain('same mL')
  })
})
