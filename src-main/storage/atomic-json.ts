import { closeSync, fsyncSync, mkdirSync, openSync, statSync } from 'node:fs'
import { join } from 'node:path'
import Conf from 'conf'

/**
 * Writes one JSON file whole, by conf: a temporary file beside it, flushed to disk, renamed over it. conf is not asked
 * to read: it would let through what this program refuses, so `deserialize` gives it an empty store.
 */
export class AtomicJson {
  readonly #conf: Conf<Record<string, unknown>>
  readonly #folder: string
  readonly path: string
  #text = '{}'

  constructor(folder: string, name: string) {
    this.#folder = folder
    this.path = join(folder, `${name}.json`)
    this.#conf = new Conf({
      cwd: folder,
      configName: name,
      fileExtension: 'json',
      accessPropertiesByDotNotation: false,
      clearInvalidConfig: false,
      configFileMode: 0o600,
      serialize: () => this.#text,
      deserialize: () => ({}),
    })
  }

  /** Returns after the text is on disk under its name. Throws the system's error, or ShortWrite. */
  write(text: string): void {
    // under a Snap variable, which terminals of snap-packaged programs hand on, conf gives up writing atomically
    delete process.env['SNAP']
    mkdirSync(this.#folder, { recursive: true, mode: 0o700 })
    this.#text = text
    try {
      this.#conf.store = NOTHING_TO_KEEP
    } finally {
      this.#text = '{}'
    }
    // a nearly full disk may take only the first part of one write, and the writer below conf does not look
    if (statSync(this.path).size !== Buffer.byteLength(text)) throw new ShortWrite()
    syncFolder(this.#folder)
  }
}

/** conf reads all of the old file before a write, to carry over notes of its own: with these it has them, and does not. */
const NOTHING_TO_KEEP = { __internal__: {} }

export class ShortWrite extends Error {
  readonly code = 'ENOSPC'
}

/** Makes a rename last through a power cut. Some systems cannot open folders; there the rename alone must do. */
function syncFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r')
    try {
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
  } catch {
    // nothing more can be done, and the file itself is flushed
  }
}
