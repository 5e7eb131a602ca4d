import { randomUUID } from 'node:crypto'
import { existsSync, readdirSync, statSync } from 'node:fs'
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
  /** files dealt with, by name, with the size and time they had */
  taken: z.record(z.string(), z.string()),
})
type Memory = z.output<typeof memorySchema>

/** `<site id>--<installation id>.dosewright.json`: two installations never write the same file, so no sync conflicts. */
const SHARED_FILE = /^([\da-f-]{36})--([\da-f-]{36})\.dosewright\.json$/

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
    const known = memory.folder !== null && SHARED_FILE.test(name)
    return known && memory.folder !== null ? join(memory.folder, name) : null
  }
  const isTaken = (name: string, path: string): boolean => memory.taken[name] === fingerprint(path)

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
            const parts = SHARED_FILE.exec(name)
            const path = inFolder(name)
            if (parts === null || path === null || parts[2] === memory.device) return []
            const stats = statSync(path, { throwIfNoEntry: false })
            if (stats === undefined || !stats.isFile()) return []
            return [{ file: name, changedAt: stats.mtime.toISOString(), taken: isTaken(name, path) }]
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
      // the installation's name must last before anything is published under it
      const kept = existsSync(file.path) ? ok(undefined) : remember(memory)
      if (!kept.ok) return kept
      const name = `${siteId.toLowerCase()}--${memory.device}.dosewright`
      try {
        new AtomicJson(memory.folder, name).writeText(text)
        return ok(`${name}.json`)
      } catch (error) {
        return notSaved(error)
      }
    },

    markTaken: async (name) => {
      const path = inFolder(name)
      const mark = path === null ? null : fingerprint(path)
      // not remembered: it is offered once more, which does no harm
      if (mark !== null) remember({ ...memory, taken: { ...memory.taken, [name]: mark } })
    },
  }
}

function readMemory(path: string): Memory {
  const text = readText(path)
  const fresh = { folder: null, device: randomUUID(), taken: {} }
  if (text === null || !text.ok) return fresh
  try {
    const parsed = memorySchema.safeParse(JSON.parse(text.value))
    return parsed.success ? parsed.data : fresh
  } catch {
    return fresh
  }
}

function fingerprint(path: string): string | null {
  const stats = statSync(path, { throwIfNoEntry: false })
  return stats === undefined ? null : `${stats.size}:${Math.trunc(stats.mtimeMs)}`
}
