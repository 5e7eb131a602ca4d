import { describe, expect, it } from 'vitest'
import type { PumpState } from '#core/worksheet/types'
import { openWords } from '#renderer/screens/report/summary-words.ts'
import type { CompareRow } from '#renderer/screens/visit/close/compare-rows.ts'

const row = (name: string, state: PumpState): CompareRow =>
  Object.freeze<CompareRow>({
    pumpId: name,
    name,
    product: '',
    found: { state: 'proved-out', text: null },
    left: { state, text: null },
    unit: '',
    turned: 0,
    money: null,
    litres: null,
  })

describe('what the customer reads of a visit that left something open', () => {
  it('names the pump that is open and no site condition when all of those are in order', () => {
    const said = openWords([row('Rinse aid', 'proved-in'), row('Detergent', 'proved-out')], 0, [])
    expect(said).toContain('Detergent: outside its window')
    expect(said).not.toMatch(/Rinse aid|above|condition/u)
  })

  it('tells a pump outside from one whose runs do not tell, and from one changed after its last test', () => {
    const said = openWords(
      [row('A', 'out-not-proved'), row('B', 'proved-out'), row('C', 'cannot-tell'), row('D', 'proved-in')],
      0,
      ['D'],
    )
    expect(said).toContain('A and B: outside their windows.')
    expect(said).toContain('C: the runs do not tell yet.')
    expect(said).toContain('D: changed after the last test, to be timed again.')
  })

  it('points at the site conditions when they are open, and says nothing when nothing is', () => {
    expect(openWords([row('A', 'in-not-proved')], 1, [])).toMatch(/The site condition not in order above/u)
    expect(openWords([row('A', 'in-not-proved')], 3, [])).toMatch(/The 3 site conditions not in order/u)
    expect(openWords([row('A', 'in-not-proved'), row('B', 'not-tested')], 0, [])).toBeNull()
  })
})
