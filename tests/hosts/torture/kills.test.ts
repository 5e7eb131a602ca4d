import { beforeAll, expect, it } from 'vitest'
import { needBuild } from '../launch/built-program'
import { killAgainAndAgain, troublesHere } from './kills'

beforeAll(needBuild, 180_000)

it(
  'killed 50 times in the middle of saving: no acknowledged edit is lost, everything opens, no lock is in the way',
  { timeout: 300_000 },
  async () => {
    const tally = await killAgainAndAgain(50, 20250309, troublesHere())
    console.log(JSON.stringify(tally))
    expect(tally.faults).toEqual([])
    expect(tally.kills).toBe(50)
    expect(tally.edits).toBeGreaterThan(50)
  },
)
