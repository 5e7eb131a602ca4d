import { expect, it } from 'vitest'
import { mutateAndImport } from './mutations'

it(
  '3,000 damages made by fast-check to site files, archives, glass checks and libraries, each taken in all the way: none crashes, hangs or writes half, each refusal is a sentence',
  { timeout: 240_000 },
  async () => {
    const tally = await mutateAndImport(3_000, 20250309)
    expect(tally.faults).toEqual([])
    expect(tally.mutations).toBe(3_000)
    // both outcomes must be met on every way, or nothing was tested
    expect(Object.keys(tally.byWay)).toHaveLength(6)
    for (const [way, { accepted, refused }] of Object.entries(tally.byWay))
      expect([way, accepted > 5, refused > 50]).toEqual([way, true, true])
    expect(tally.slowest).toBeLessThan(1_000)
  },
)
