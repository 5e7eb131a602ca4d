import { expect, it } from 'vitest'
import { mutateAndImport } from './mutations'

it(
  '3,000 damaged site files: none crashes, hangs or writes half, each refusal is a sentence',
  { timeout: 120_000 },
  async () => {
    const tally = await mutateAndImport(3_000, 20250309)
    expect(tally.faults).toEqual([])
    expect(tally.mutations).toBe(3_000)
    // both outcomes must be met, or nothing was tested
    expect(tally.accepted).toBeGreaterThan(100)
    expect(tally.refused).toBeGreaterThan(1_000)
    expect(tally.imported).toBeGreaterThan(10)
    expect(tally.slowest).toBeLessThan(1_000)
  },
)
