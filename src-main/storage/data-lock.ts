import { randomUUID } from 'node:crypto'
import { linkSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { fail, ok, type Outcome } from '#core/outcome'
import { isAlive, parseOwner, processStart, type LockOwner } from './lock-owner'
import { errorCode, notSaved } from './not-saved'

/** A holder touches its lock this often; one untouched for `STALE_AFTER` belongs to nobody, if nothing better is known. */
const TOUCH_EVERY = 10_000
const STALE_AFTER = 60_000

export interface DataLock {
  /** whether the folder is still ours; another program may have judged us dead while the machine slept */
  readonly isOurs: () => boolean
  readonly release: () => void
}

/** Takes the data folder for this process, or says who has it. A lock whose process is gone is cleared away. */
export function takeDataLock(root: string, now: () => string): Outcome<DataLock> {
  const path = join(root, 'lock.json')
  const owner: LockOwner = {
    processId: process.pid,
    startedAt: processStart(process.pid) ?? '',
    host: hostname(),
    since: now(),
    token: randomUUID(),
  }
  const own = join(root, `lock.${owner.token}.json`)
  try {
    // written whole under a name of its own, then linked: the lock never exists half-written
    writeFileSync(own, `${JSON.stringify(owner)}\n`, { mode: 0o600 })
    for (let attempt = 0; attempt < 20; attempt += 1) {
      if (linked(own, path)) return ok(hold(path, owner))
      const holder = readOwner(path)
      if (holder !== null && !isStale(holder, path)) return fail(inUse(holder))
      clearAway(path, root, holder)
    }
    return fail({ code: 'not-saved', reason: 'the lock of the data folder cannot be taken' })
  } catch (error) {
    return notSaved(error)
  } finally {
    rmSync(own, { force: true })
  }
}

const inUse = (holder: LockOwner) =>
  ({ code: 'data-folder-in-use', processId: holder.processId, since: holder.since }) as const

function linked(own: string, path: string): boolean {
  try {
    linkSync(own, path)
    return true
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false
    if (errorCode(error) !== 'EPERM' && errorCode(error) !== 'ENOTSUP' && errorCode(error) !== 'EOPNOTSUPP')
      throw error
  }
  // file systems without links (FAT): created exclusively instead
  try {
    writeFileSync(path, readFileSync(own), { flag: 'wx', mode: 0o600 })
    return true
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false
    throw error
  }
}

const readOwner = (path: string): LockOwner | null => {
  try {
    return parseOwner(readFileSync(path, 'utf8'))
  } catch {
    return null
  }
}

/** On this machine the process table decides; for a folder shared between machines only the time of the last touch. */
function isStale(holder: LockOwner, path: string): boolean {
  const untouched = Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0) > STALE_AFTER
  if (holder.host !== hostname()) return untouched
  if (!isAlive(holder.processId)) return true
  const started = processStart(holder.processId)
  if (holder.startedAt === '') return untouched
  return started !== holder.startedAt
}

/** Moves a stale lock out of the way; should it turn out that another process was quicker, its lock is put back. */
function clearAway(path: string, root: string, judged: LockOwner | null): void {
  const aside = join(root, `lock.${randomUUID()}.stale.json`)
  try {
    renameSync(path, aside)
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return
    throw error
  }
  const taken = readOwner(aside)
  if (taken !== null && taken.token !== judged?.token) linked(aside, path)
  rmSync(aside, { force: true })
}

function hold(path: string, owner: LockOwner): DataLock {
  const touch = setInterval(() => {
    try {
      utimesSync(path, new Date(), new Date())
    } catch {
      // checked before every write
    }
  }, TOUCH_EVERY)
  touch.unref()
  const isOurs = (): boolean => readOwner(path)?.token === owner.token
  return {
    isOurs,
    release: () => {
      clearInterval(touch)
      try {
        if (isOurs()) rmSync(path, { force: true })
      } catch {
        // a folder that cannot be written any more: the next start sees that we are gone
      }
    },
  }
}
