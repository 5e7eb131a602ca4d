import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Backup } from '#core/contract/ports'
import { copyInPlace, stamp } from './file-moves'

/** Days on which every copy is kept; of earlier months the first copy is kept. */
export const DAYS_KEPT = 14

/** Copies made before a step back or an import, whatever their day. */
const STEPS_KEPT = 20

const COPY = /^(\d{4}-\d{2}-\d{2})(?:\.\d{8}T\d{6}Z(?:-\d+)?)?$/

/** Copies of one document over time: one before the first write of each day, and one before each step back. */
export class Backups {
  readonly #folder: string
  readonly #source: string

  constructor(root: string, key: string, source: string) {
    this.#folder = join(root, 'backups', key)
    this.#source = source
  }

  /** Copies the document as it is, unless today's copy is there. A clock set back adds no copy and replaces none. */
  daily(now: string): void {
    const day = now.slice(0, 10)
    if (!existsSync(this.#source) || existsSync(this.path(day))) return
    this.#copy(day)
    this.#thin()
  }

  /** Copies the document as it is under this instant, whatever copies there are. */
  take(now: string): void {
    const name = `${now.slice(0, 10)}.${stamp(now)}`
    let free = name
    for (let number = 2; existsSync(this.path(free)); number += 1) free = `${name}-${number}`
    this.#copy(free)
    const taken = this.#names().filter((one) => one.length > 10)
    for (const old of taken.slice(0, -STEPS_KEPT)) rmSync(this.path(old), { force: true })
  }

  /** Newest first. */
  list(): readonly Backup[] {
    return this.#names()
      .map((copy) => {
        const { mtime, size } = statSync(this.path(copy))
        return { copy, takenAt: mtime.toISOString(), kilobytes: Math.max(1, Math.round(size / 1000)) }
      })
      .toReversed()
  }

  /** Whether a name given by a caller is one of the copies; nothing else becomes part of a path. */
  has(copy: string): boolean {
    return COPY.test(copy) && existsSync(this.path(copy))
  }

  path(copy: string): string {
    return join(this.#folder, `${copy}.json`)
  }

  #copy(name: string): void {
    mkdirSync(this.#folder, { recursive: true, mode: 0o700 })
    copyInPlace(this.#source, this.path(name))
  }

  #names(): readonly string[] {
    if (!existsSync(this.#folder)) return []
    return readdirSync(this.#folder)
      .filter((file) => file.endsWith('.json'))
      .map((file) => file.slice(0, -5))
      .filter((name) => COPY.test(name))
      .toSorted()
  }

  #thin(): void {
    for (const name of toThin(this.#names())) rmSync(this.path(name), { force: true })
  }
}

/** Of the names of copies, oldest first, those that may go: all but the newest days' and the first of each month. */
export function toThin(names: readonly string[]): readonly string[] {
  const days = [...new Set(names.map((name) => name.slice(0, 10)))]
  const recent = new Set(days.slice(-DAYS_KEPT))
  const months = new Set<string>()
  return names.filter((name) => {
    const firstOfMonth = !months.has(name.slice(0, 7))
    months.add(name.slice(0, 7))
    return !firstOfMonth && !recent.has(name.slice(0, 10))
  })
}
