import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { difference } from '#core/documents/changes'
import type { Call } from '#core/contract/contract'
import { good, removeFolder, startProgram, tempFolder } from '../contract/program'
import { site } from '../contract/sample-site'
import { needBuild, OUT } from './launch/built-program'
import { liveFor } from './torture/long-life'

beforeAll(needBuild, 180_000)

let folder = ''
beforeEach(() => {
  folder = tempFolder()
})
afterEach(() => removeFolder(folder))

describe('hours with the program', () => {
  it.runIf(existsSync('/proc/self/status'))(
    'of four hours of use, 480 edits and 1,440 other calls, nothing stays in memory or open (npm run torture: a day)',
    async () => {
      const day = await liveFor(4)
      expect(day.after.handles).toBeLessThanOrEqual(day.before.handles + 2)
      expect(day.after.megabytes - day.before.megabytes).toBeLessThan(40)
      expect(day.sameAtTheEnd).toBe(true)
      expect(day.exit).toBe(0)
    },
    300_000,
  )
})

const startAgain: Call = async (method, input) => {
  const { call, program } = startProgram(folder)
  const outcome = await call(method, input)
  program.close()
  return outcome
}

describe('time', () => {
  it('set back by years while the program runs: edits keep their order, none is refused, copies stay', async () => {
    let now = '2026-03-09T10:00:00.000Z'
    const { call, program } = startProgram(folder, { now: () => now })
    const made = site()
    let { revision } = await good(call('site.create', { site: made }))
    let current = made
    for (const at of ['2026-03-09T11:00:00.000Z', '2019-01-01T00:00:00.000Z', '2026-03-10T00:00:00.000Z']) {
      now = at
      const next = { ...current, notes: at }
      const saved = await good(
        call('site.edit', { id: made.id, base: revision, changes: difference(current, next) }),
      )
      expect(saved.savedAt).toBe(at)
      expect(saved.revision).toBeGreaterThan(revision)
      ;({ revision } = saved)
      current = next
    }
    program.close()
    const { copies } = await good(startAgain('backups.list', { document: made.id }))
    expect(copies.map(({ copy }) => copy)).toEqual(['2026-03-10', '2026-03-09', '2019-01-01'])
  })

  // Dublin's clocks change on 29 March and 25 October 2026, New York's on 8 March and 1 November (IANA database).
  it.each([
    ['any day', 'tests/fixtures/documents/site-v1-full.json', '2025-06-01'],
    ['the day clocks go forward', 'assets/demo/copper-spoon-diner.json', '2026-03-29'],
    ['the day clocks go back', 'assets/demo/copper-spoon-diner.json', '2026-10-25'],
    ['the day after', 'assets/demo/lantern-lane-cafe.json', '2026-11-02'],
  ])(
    'of the zone around the machine changes no cost, order day or order of visits on %s',
    (_day, name, asOf) => {
      const file = fileURLToPath(new URL(`../../${name}`, import.meta.url))
      const worksheet = (zone: string): string =>
        execFileSync(process.execPath, [join(OUT, 'main', 'worksheet.js'), file, '--json', '--as-of', asOf], {
          encoding: 'utf8',
          env: { TZ: zone },
          maxBuffer: 64_000_000,
        })
      const zones = [
        'UTC',
        'Europe/Dublin',
        'America/New_York',
        'Asia/Kolkata',
        'Pacific/Chatham',
        'Pacific/Kiritimati',
        'Australia/Lord_Howe',
      ]
      const [first = '', ...others] = zones.map(worksheet)
      expect(first).toContain('"months"')
      expect(first).toContain('"visits"')
      for (const other of others) expect(other).toBe(first)
    },
  )
})
