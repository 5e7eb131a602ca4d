import { createHash, randomUUID } from 'node:crypto'
import { existsSync, readdirSync, renameSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import type { SharedFile, SharedFolder } from '#core/contract/ports'
import { fail, ok, type Outcome } from '#core/outcome'
import { AtomicJson } from './atomic-json'
import { notSaved } from './not-saved'
import { readText } from './read-text'

const memorySchema = z.strictObject({
  folder: z.string().nullable(),
  /** tells this installation's files from the others' */
  device: z.uuid(),
  /** files dealt with, by name, as they were: size and time, and a digest for when a sync service changes those */
  taken: z.record(z.string(), z.string()),
  /** the same of files this installation wrote */
  written: z.record(z.string(), z.string()).default({}),
})
type Memory = z.output<typeof memorySchema>

/**
 * `<site id>--<installation id>.dosewright.json`: two installations never write the same file. Sync services put words
 * of their own into the name of a second version, before or after any of its dots; such a copy is looked at like any other.
 */
const SHARED_FILE = /^[\da-f-]{36}--[\da-f-]{36}[^/\\\p{C}]*\.json$/u
const MOST_LETTERS = 200

export interface SharedOptions {
  readonly root: string
  /** asks the person for a folder; null where this host has no way to ask */
  readonly ask: (() => Promise<string | null>) | null
  /** a folder named on the command line counts for this run */
  readonly folder: string | null
}

/** The folder a team keeps in step with a file-sync service. What is remembered about it stays on this machine. */
export function sharedFolder({ root, ask, folder }: SharedOptions): SharedFolder {
  const file = new AtomicJson(root, 'shared')
  let memory = readMemory(file.path)
  if (folder !== null) memory = { ...memory, folder }

  const remember = (next: Memory): Outcome<void> => {
    try {
      file.writeText(`${JSON.stringify(next, null, 2)}\n`)
      memory = next
      return ok(undefined)
    } catch (error) {
      return notSaved(error)
    }
  }
  const inFolder = (name: string): string | null => {
    const known = memory.folder !== null && name.length <= MOST_LETTERS && SHARED_FILE.test(name)
    return known && memory.folder !== null ? join(memory.folder, name) : null
  }
  const ownFile = (siteId: string): string => `${siteId.toLowerCase()}--${memory.device}.dosewright`
  const digests = new Map<string, string>()
  /** Whether a file is still what was noted of it. It is read only where its size or time have changed. */
  const stands = (note: string | undefined, path: string): boolean => {
    if (note === undefined) return false
    const mark = fingerprint(path)
    const [noted, digest] = note.split(' ')
    if (mark === null || noted === mark) return mark !== null
    const seen = `${path} ${mark}`
    const now = digests.get(seen) ?? digestOf(readText(path))
    digests.set(seen, now)
    return now === digest
  }
  /** Under a name of ours there may lie what a restored or copied installation wrote. */
  const isOurs = (name: string, path: string): boolean => stands(memory.written[name], path)

  return {
    describe: () => ({ folder: memory.folder, canChoose: ask !== null }),

    choose: async () => {
      if (ask === null)
        return fail({ code: 'unavailable', what: 'name the shared folder when starting, with --shared' })
      const chosen = await ask()
      if (chosen === null) return ok(memory.folder)
      const kept = remember({ ...memory, folder: chosen })
      return kept.ok ? ok(chosen) : kept
    },

    list: async () => {
      if (memory.folder === null) return ok([])
      try {
        return ok(
          readdirSync(memory.folder).flatMap((name): readonly SharedFile[] => {
            const path = inFolder(name)
            if (path === null) return []
            const stats = statSync(path, { throwIfNoEntry: false })
            if (stats === undefined || !stats.isFile() || isOurs(name, path)) return []
            return [
              { file: name, changedAt: stats.mtime.toISOString(), taken: stands(memory.taken[name], path) },
            ]
          }),
        )
      } catch {
        return fail({
          code: 'unavailable',
          what: 'the shared folder cannot be read; see whether it is still there',
        })
      }
    },

    read: async (name) => {
      const path = inFolder(name)
      return (path === null ? null : readText(path)) ?? fail({ code: 'not-found', what: 'the shared file' })
    },

    write: async (siteId, text) => {
      if (memory.folder === null || !existsSync(memory.folder))
        return fail({ code: 'unavailable', what: 'there is no shared folder; choose one first' })
      const own = ownFile(siteId)
      const name = `${own}.json`
      const path = join(memory.folder, name)
      try {
        // what another hand put under our name is kept under one that is nobody's, where all see it
        if (existsSync(path) && !isOurs(name, path))
          renameSync(path, join(memory.folder, `${siteId.toLowerCase()}--${randomUUID()}.dosewright.json`))
        // noted first: the installation's name must last, too, before anything lies there under it
        const digest = digestOf(ok(text))
        const note = (mark: string): Outcome<void> =>
          remember({ ...memory, written: { ...memory.written, [name]: `${mark} ${digest}` } })
        const noted = note('unknown')
        if (!noted.ok) return noted
        new AtomicJson(memory.folder, own).writeText(text)
        note(fingerprint(path) ?? 'unknown')
        return ok(name)
      } catch (error) {
        return notSaved(error)
      }
    },

    markTaken: async (name) => {
      const path = inFolder(name)
      const mark = path === null ? null : fingerprint(path)
      if (path === null || mark === null) return
      // not remembered: it is offered once more, which does no harm
      remember({ ...memory, taken: { ...memory.taken, [name]: `${mark} ${digestOf(readText(path))}` } })
    },
  }
}

function readMemory(path: string): Memory {
  const text = readText(path)
  const fresh = { folder: null, device: randomUUID(), taken: {}, written: {} }
  if (text === null || !text.ok) return fresh
  try {
    const parsed = memorySchema.safeParse(JSON.parse(text.value))
    return parsed.success ? parsed.data : fresh
  } catch {
    return fresh
  }
}

const digestOf = (text: Outcome<string> | null): string =>
  text?.ok === true ? createHash('sha256').update(text.value).digest('base64url') : ''

function fingerprint(path: string): string | null {
  const stats = statSync(path, { throwIfNoEntry: false })
  return stats === undefined ? null : `${stats.size}:${Math.trunc(stats.mtimeMs)}`
}
