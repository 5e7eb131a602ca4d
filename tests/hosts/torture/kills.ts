import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, rmSync, watch } from 'node:fs'
import { join } from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import type { Call } from '#core/contract/contract'
import type { Id, Site } from '#core/records/index'
import { good, listed, removeFolder, tempFolder } from '../../contract/program'
import { site } from '../../contract/sample-site'
import { startBuilt, type Started } from '../launch/built-program'
import { connect } from './client'
import { seeded, uuidFrom } from './random'
import { keepEditing, type Known } from './writer'

/** What goes wrong besides the kill. The last two need a disk of their own, which only the administrator can mount. */
export type Trouble = 'none' | 'between-write-and-rename' | 'file-deleted' | 'disk-full' | 'disk-read-only'

export interface Tally {
  kills: number
  edits: number
  refused: number
  recovered: number
  slowestStart: number
  readonly byTrouble: Record<Trouble, number>
  readonly faults: string[]
}

const SITES = 3

/** Starts, edits at full speed, kills, restarts, compares; `kills` times, all from one seed. */
export async function killAgainAndAgain(
  kills: number,
  seed: number,
  troubles: readonly Trouble[],
): Promise<Tally> {
  const random = seeded(seed)
  const folder = tempFolder()
  const disk = new Disk(
    join(folder, 'data'),
    troubles.some((trouble) => trouble.startsWith('disk')),
  )
  const tally: Tally = {
    kills: 0,
    edits: 0,
    refused: 0,
    recovered: 0,
    slowestStart: 0,
    byTrouble: {
      none: 0,
      'between-write-and-rename': 0,
      'file-deleted': 0,
      'disk-full': 0,
      'disk-read-only': 0,
    },
    faults: [],
  }
  const known: Known[] = []
  try {
    let started = await timedStart(disk.path, tally)
    const call = await connect(started)
    for (let number = 0; number < SITES; number += 1) {
      const made = site({ id: uuidFrom(random), name: `Site ${number}` })
      await good(call('site.create', { site: made }))
      known.push({ acknowledged: made, unanswered: null, edits: 0, refused: 0 })
    }
    let reachable = call
    while (tally.kills < kills) {
      const trouble = troubles[tally.kills % troubles.length] ?? 'none'
      await editUntilKilled(started, reachable, known, random, trouble, disk)
      tally.kills += 1
      tally.byTrouble[trouble] += 1
      started = await timedStart(disk.path, tally)
      reachable = await connect(started)
      for (const one of known) await compare(reachable, one, trouble, tally)
      if (tally.kills % 100 === 0) console.log(`${tally.kills} kills`)
      if (tally.faults.length > 0) break
    }
    started.child.kill('SIGTERM')
    await started.ended
  } finally {
    disk.free()
    removeFolder(folder)
  }
  for (const one of known) {
    tally.edits += one.edits
    tally.refused += one.refused
  }
  return tally
}

async function timedStart(folder: string, tally: Tally): Promise<Started> {
  const began = performance.now()
  const started = await startBuilt(folder)
  tally.slowestStart = Math.max(tally.slowestStart, performance.now() - began)
  return started
}

async function editUntilKilled(
  started: Started,
  call: Call,
  known: readonly Known[],
  random: () => number,
  trouble: Trouble,
  disk: Disk,
): Promise<void> {
  const editing = Promise.all(known.map((one) => keepEditing(call, one, random)))
  // edits first, then the trouble, at a moment that has nothing to do with either
  const wanted = known.reduce((sum, one) => sum + one.edits, 0) + 2 + Math.floor(random() * 12)
  const late = performance.now() + 10_000
  while (known.reduce((sum, one) => sum + one.edits, 0) < wanted && performance.now() < late) await wait(2)
  await wait(random() * 20)
  if (trouble === 'disk-full') disk.fill()
  if (trouble === 'disk-read-only') disk.readOnly()
  if (trouble === 'file-deleted') {
    const victim = known[Math.floor(random() * known.length)]?.acknowledged.id ?? ''
    rmSync(join(disk.path, 'sites', `${victim}.json`), { force: true })
  }
  if (trouble === 'between-write-and-rename') await temporaryFile(join(disk.path, 'sites'))
  else if (trouble.startsWith('disk')) await wait(10 + random() * 30)
  started.child.kill('SIGKILL')
  await started.ended
  await editing
  disk.normal()
}

/** The moment a half-written file shows up beside the good one. */
const temporaryFile = (folder: string): Promise<void> =>
  new Promise((resolve) => {
    const done = (): void => {
      watcher.close()
      clearTimeout(late)
      resolve()
    }
    const watcher = watch(folder, (_event, name) => {
      if (name !== null && /^[\da-f-]{36}\.json\.tmp-/.test(name)) done()
    })
    const late = setTimeout(done, 500)
  })

async function compare(call: Call, one: Known, trouble: Trouble, tally: Tally): Promise<void> {
  const { id } = one.acknowledged
  const sites = await listed(call)
  const row = sites.find((site) => site.id === id)
  if (row?.state === 'damaged') {
    // only a file that was deleted may need its last good version; nothing may ever be unreadable
    if (trouble !== 'file-deleted' || row.setAside !== null)
      tally.faults.push(`after ${tally.kills} kills (${trouble}): ${JSON.stringify(row)}`)
    await good(call('site.recover', { id }))
    tally.recovered += 1
  } else if (row?.state !== 'good') tally.faults.push(`after ${tally.kills} kills: no site ${id}`)
  const found = await openAs(call, id)
  const isKnown = isDeepStrictEqual(found, one.acknowledged) || isDeepStrictEqual(found, one.unanswered)
  if (!isKnown)
    tally.faults.push(`after ${tally.kills} kills (${trouble}): an acknowledged edit of ${id} is lost`)
  one.acknowledged = found
  one.unanswered = null
}

const openAs = async (call: Call, id: Id): Promise<Site> => (await good(call('site.open', { id }))).site
const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms))

/** The data folder, on a small disk of its own where that is wanted. */
class Disk {
  readonly path: string
  readonly #own: boolean

  constructor(path: string, own: boolean) {
    this.path = path
    this.#own = own
    mkdirSync(path)
    if (own) execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', path])
  }

  fill(): void {
    try {
      execFileSync('dd', ['if=/dev/zero', `of=${join(this.path, 'filler')}`, 'bs=4k'], { stdio: 'ignore' })
    } catch {
      // dd stops when the disk is full, which is what it is for
    }
  }

  readOnly(): void {
    // refused while a file is open for writing; then this round is an ordinary kill
    try {
      execFileSync('mount', ['-o', 'remount,ro', this.path], { stdio: 'ignore' })
    } catch {
      return
    }
  }

  normal(): void {
    if (!this.#own) return
    execFileSync('mount', ['-o', 'remount,rw', this.path])
    rmSync(join(this.path, 'filler'), { force: true })
  }

  free(): void {
    if (this.#own && existsSync(this.path)) execFileSync('umount', ['-l', this.path])
  }
}

/** Whether a disk of its own can be mounted here. */
export function canMount(): boolean {
  const probe = tempFolder()
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', probe], { stdio: 'ignore' })
    execFileSync('umount', [probe])
    return true
  } catch {
    return false
  } finally {
    removeFolder(probe)
  }
}

export const troublesHere = (): readonly Trouble[] => [
  'none',
  'between-write-and-rename',
  'file-deleted',
  ...(canMount() ? (['disk-full', 'disk-read-only'] as const) : []),
]
