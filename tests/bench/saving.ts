import {
  closeSync,
  fsyncSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { decode } from '#core/documents/decode'
import { encode } from '#core/documents/encode'
import type { Site } from '#core/records/index'
import { ok } from '#core/outcome'
import { AtomicJson } from '#main/storage/atomic-json'
import { FileStore } from '#main/storage/document-store'
import { good } from '../support/outcomes'
import { bigSite } from './big-site'
import { ratioOf, timedTogether, type Ratio, type Timing } from './measure'

/** A bare write, flush and rename of the same text; `lasting` flushes the folder too, so that a power cut keeps it. */
function bareWrite(folder: string, text: string, lasting: boolean): void {
  const file = openSync(join(folder, 'x.tmp'), 'w')
  writeFileSync(file, text)
  fsyncSync(file)
  closeSync(file)
  renameSync(join(folder, 'x.tmp'), join(folder, 'x'))
  if (!lasting) return
  const handle = openSync(folder, 'r')
  fsyncSync(handle)
  closeSync(handle)
}

/** Saving a site of some 200 kB after one edit, in a folder of its own that is taken away. */
export async function saving(): Promise<readonly Ratio[]> {
  const root = mkdtempSync(join(tmpdir(), 'dosewright-bench-'))
  for (const folder of ['bare', 'sites', 'library', 'damaged', 'older-versions', 'backups'])
    mkdirSync(join(root, folder))
  try {
    const text = encode('site', bigSite(15, 5))
    const { document } = good(decode('site', text))
    const name = { kind: 'site', id: document.site.id } as const
    const store = new FileStore({
      root,
      now: () => new Date().toISOString(),
      mayWrite: () => ok(undefined),
    })
    let saved = good(await store.create(name, document))
    let edits = 0
    const edited = (): Site => ({ ...document.site, notes: `edit ${(edits += 1)}` })
    const bytes = Buffer.from(text)
    const writer = new AtomicJson(join(root, 'sites'), 'alone')
    const prepare = edited
    const [bare, lasting, written, stored] = await timedTogether(
      [
        { work: () => bareWrite(join(root, 'bare'), text, false), prepare },
        { work: () => bareWrite(join(root, 'bare'), text, true), prepare },
        {
          work: () => {
            writer.write(bytes)
            writer.flush()
          },
          prepare,
        },
        {
          work: async (site: Site) => {
            saved = good(await store.write(name, { ...document, site }, saved.revision))
          },
          prepare,
        },
      ],
      60,
      'wall',
    )
    const size = `${(text.length / 1000).toFixed(0)} kB`
    return [
      ...against(`(d) save of a site of ${size} after an edit, against a bare write`, 1.5, stored, bare),
      ...against('    the same, against a bare write that outlasts a power cut', null, stored, lasting),
      ...against('    of that, the file alone', null, written, lasting),
    ]
  } finally {
    rmSync(root, { recursive: true })
  }
}

const against = (name: string, goal: number | null, ours?: Timing, floor?: Timing): readonly Ratio[] =>
  ours === undefined || floor === undefined ? [] : [ratioOf(name, goal, ours, floor)]
