import { describe, expect, it } from 'vitest'
import { settlingWords } from '#core/messages/decision-words'

describe('the cheapest next step', () => {
  it('is said in runs and whole seconds, never in fewer seconds than are needed', () => {
    expect(settlingWords({ kind: 'more-runs', runs: 1, seconds: 60 }, [])).toBe(
      'One more run of 60 s would settle it.',
    )
    expect(settlingWords({ kind: 'longer-runs', runs: 2, seconds: 94.2 }, [])).toBe(
      '2 more runs, 95 s each, would settle it.',
    )
    expect(
      settlingWords({ kind: 'better-cylinder', instrumentId: 'a', seconds: 60 }, [
        { id: 'a', name: '25 mL' },
      ]),
    ).toContain('“25 mL”')
  })
})
