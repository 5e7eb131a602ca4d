import { describe, expect, it } from 'vitest'
import { mutateOthers } from './other-mutations'

describe('damaged files that are not a site', () => {
  const tally = mutateOthers(3_000, 20250309)

  it.each(['products', 'instruments', 'settings', 'everything as one file', 'glass check'])(
    '%s: none crashes, each refusal is a sentence, what is accepted comes back as it was read',
    (name) => {
      // both outcomes must be met, or nothing was tested
      expect(tally[name]?.accepted).toBeGreaterThan(5)
      expect(tally[name]?.refused).toBeGreaterThan(100)
    },
  )
})
