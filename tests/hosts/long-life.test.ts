import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { difference } from '#core/documents/changes'
import type { Call } from '#core/contract/contract'
import type { Site } from '#core/records/index'
import { good, removeFolder, startProgram, tempFolder } from '../contract/program'
import { site } from '../contract/sample-site'
import { needBuild, OUT, startBuilt } from './launch/built-program'
import { connect } from './torture/client'

beforeAll(needBuild, 180_000)

let folder = ''
beforeEach(() => {
  folder = tempFolder()
})
afterEach(() => removeFolder(folder))

interface Weight {
  readonly megabytes: number
  readonly handles: number
}

/** Linux proc(5): resident set in kB, and the open files of a process. */
const weigh = (processId: number): Weight => ({
  megabytes: Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${processId}/status`, 'utf8'))?.[1]) / 1024,
  handles: readdirSync(`/proc/${processId}/fd`).length,
})

/** What an hour with the program asks of its host: an edit every half minute, and as many looks at the list. */
async function hour(
  call: Call,
  start: { site: Site; revision: number },
): Promise<{ site: Site; revision: number }> {
  let { site: current, revision } = start
  for (let edit = 0; edit < 120; edit += 1) {
    const next = { ...current, notes: `note ${edit} `.repeat(1 + (edit % 50)) }
    const saved = await good(
      call('site.edit', { id: next.id, base: revision, changes: difference(current, next) }),
    )
    ;({ revision } = saved)
    current = next
    await good(call('sites.list', {}))
    await call('site.export', { id: next.id })
    await call('site.open', { id: crypto.randomUUID() })
  }
  return { site: current, revision }
}

describe('a day with the program', () => {
  it.runIf(existsSync('/proc/self/status'))(
    'of 24 hours with 2,880 edits and 8,640 other calls leaves neither memory nor open files behind',
    async () => {
      const started = await startBuilt(folder)
      const call = await connect(started)
      const made = site()
      const { revision } = await good(call('site.create', { site: made }))
      let state = { site: made, revision }
      for (let warming = 0; warming < 4; warming += 1) state = await hour(call, state)
      const processId = started.child.pid ?? 0
      const before = weigh(processId)
      for (let hours = 0; hours < 24; hours += 1) state = await hour(call, state)
      const after = weigh(processId)
      console.log(JSON.stringify({ before, after }))
      expect(after.handles).toBeLessThanOrEqual(before.handles + 2)
      expect(after.megabytes - before.megabytes).toBeLessThan(40)
      expect((await good(call('site.open', { id: made.id }))).site).toEqual(state.site)
      started.child.kill('SIGTERM')
      expect(await started.ended).toBe(0)
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

  it('of day and zone around the machine changes no figure of a worksheet', () => {
    const file = fileURLToPath(new URL('../fixtures/documents/site-v1-full.json', import.meta.url))
    const worksheet = (zone: string): string =>
      execFileSync(process.execPath, [join(OUT, 'main', 'worksheet.js'), file, '--json'], {
        encoding: 'utf8',
        env: { TZ: zone },
      })
    const zones = ['UTC', 'America/New_York', 'Asia/Kolkata', 'Pacific/Kiritimati', 'Australia/Lord_Howe']
    const [first, ...others] = zones.map(worksheet)
    expect(first?.length).toBeGreaterThan(500)
    for (const other of others) expect(other).toBe(first)
  })
})
