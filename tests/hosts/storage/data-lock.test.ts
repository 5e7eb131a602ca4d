import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync, readFileSync, readdirSync, utimesSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { takeDataLock } from '#main/storage/data-lock'
import { processStart } from '#main/storage/lock-owner'
import { removeFolder, startProgram, tempFolder } from '../../contract/program'
import { compose } from './files'
import { allowWriting, canForbid, forbidWriting } from '#tests/support/forbidding'

let root = ''
let sleeper: ChildProcess | null = null
beforeEach(() => {
  root = tempFolder()
})
afterEach(() => {
  sleeper?.kill('SIGKILL')
  sleeper = null
  removeFolder(root)
})

const now = (): string => '2025-03-09T08:00:00.000Z'
const lockPath = (): string => join(root, 'lock.json')
const writeLock = (changes: object): void =>
  writeFileSync(
    lockPath(),
    JSON.stringify({
      processId: process.pid,
      startedAt: processStart(process.pid),
      host: hostname(),
      since: now(),
      token: 'another',
      ...changes,
    }),
  )

/** A process that lives until the end of the test. */
const living = (): number => {
  sleeper = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)'])
  return sleeper.pid ?? 0
}

describe('the lock of a data folder', () => {
  it('names who has the folder to whoever comes second', () => {
    const first = takeDataLock(root, now)
    expect(first.ok).toBe(true)
    expect(takeDataLock(root, now)).toEqual({
      ok: false,
      problem: { code: 'data-folder-in-use', processId: process.pid, since: now() },
    })
  })

  it('is gone after release, and leaves nothing behind', () => {
    const lock = takeDataLock(root, now)
    if (!lock.ok) throw new Error('no lock')
    lock.value.release()
    expect(readdirSync(root)).toEqual([])
    expect(takeDataLock(root, now).ok).toBe(true)
  })

  it.runIf(canForbid)('lets the program end in a folder that cannot be written any more', () => {
    const lock = takeDataLock(root, now)
    if (!lock.ok) throw new Error('no lock')
    forbidWriting(root)
    try {
      expect(() => lock.value.release()).not.toThrow()
    } finally {
      allowWriting(root)
    }
    expect(readdirSync(root)).toEqual(['lock.json'])
  })

  it('of a process that is gone is in nobody’s way', () => {
    // the largest process id Linux gives is 4 194 304 (proc(5), pid_max)
    writeLock({ processId: 4_194_305 })
    expect(takeDataLock(root, now).ok).toBe(true)
    expect(readdirSync(root)).toEqual(['lock.json'])
  })

  it.runIf(process.platform === 'linux')(
    'of a dead process whose number lives on in another is in nobody’s way',
    () => {
      writeLock({ processId: living(), startedAt: `${processStart(process.pid)}9` })
      expect(takeDataLock(root, now).ok).toBe(true)
    },
  )

  it('of a living process holds', () => {
    const processId = living()
    writeLock({ processId, startedAt: processStart(processId) })
    expect(takeDataLock(root, now)).toMatchObject({ problem: { code: 'data-folder-in-use', processId } })
  })

  it('from another machine holds while it is being touched, and falls a minute after that ends', () => {
    writeLock({ host: 'another-machine', processId: 4_194_305 })
    expect(takeDataLock(root, now)).toMatchObject({ problem: { code: 'data-folder-in-use' } })
    const old = new Date(Date.now() - 61_000)
    utimesSync(lockPath(), old, old)
    expect(takeDataLock(root, now).ok).toBe(true)
  })

  it.each(['', '{', '{"processId":-1}', 'null', '[]'])('that reads %j belongs to nobody', (text) => {
    writeFileSync(lockPath(), text)
    expect(takeDataLock(root, now).ok).toBe(true)
  })

  it('goes to exactly one of many who come at once', () => {
    writeLock({ processId: 4_194_305 })
    const taken = Array.from({ length: 20 }, () => takeDataLock(root, now)).filter((lock) => lock.ok)
    expect(taken).toHaveLength(1)
    expect(readdirSync(root)).toEqual(['lock.json'])
  })

  it('taken away while the program runs is taken again before the next write', async () => {
    const { call, program } = startProgram(root)
    writeFileSync(lockPath(), 'x')
    expect(await call('demo.add', {})).toMatchObject({ ok: true })
    expect(JSON.parse(readFileSync(lockPath(), 'utf8'))).toMatchObject({ processId: process.pid })
    program.close()
    expect(existsSync(lockPath())).toBe(false)
  })

  it('that another program took meanwhile stops this one from writing', async () => {
    const { call, program } = startProgram(root)
    const processId = living()
    writeLock({ processId, startedAt: processStart(processId) })
    expect(await call('demo.add', {})).toMatchObject({
      ok: false,
      problem: { code: 'data-folder-in-use', processId },
    })
    program.close()
    expect(JSON.parse(readFileSync(lockPath(), 'utf8'))).toMatchObject({ token: 'another' })
  })

  it('refuses a second program on the same folder', () => {
    const { program } = startProgram(root)
    const second = compose({
      dataFolder: root,
      assets: '',
      log: () => undefined,
      host: {
        describe: () => ({ kind: 'local-window', version: '', savesPdf: false, dataFolder: root }),
        savePdf: null,
      },
    })
    expect(second).toMatchObject({
      ok: false,
      problem: { code: 'data-folder-in-use', processId: process.pid },
    })
    program.close()
  })
})
