import { describe, expect, it } from 'vitest'
import { attentionWords } from '#core/messages/attention-words'
import { lastsWords } from '#core/messages/order-words'
import type { AttentionReason } from '#core/spend/attention'

const name = (): string => 'Rinse aid'
const runningOut = (days: number): AttentionReason => ({
  code: 'running-out',
  productId: 'p',
  days,
  runsOutOn: '2026-05-04',
})

describe('a product that runs out', () => {
  it('says the days that are left', () => {
    expect(attentionWords(runningOut(3), name, 'point').word).toBe('Rinse aid runs out in 3 days')
    expect(attentionWords(runningOut(1), name, 'point').word).toBe('Rinse aid runs out in 1 day')
  })

  it('is used up in the list of all sites when it is used up on its shelf', () => {
    const shelf = lastsWords({ daysOfCover: 0, runsOutOn: '2026-05-04' } as Parameters<typeof lastsWords>[0])
    expect(attentionWords(runningOut(0), name, 'point').word).toBe(`Rinse aid ${shelf[0]}`)
  })
})
