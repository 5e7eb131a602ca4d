import { accessSync, closeSync, constants, fsyncSync, mkdirSync, openSync, statSync } from 'node:fs'
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
  #bytes: Buffer | string = '{}'

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
      // what it gives goes unread to the writer below, which takes bytes as well
      serialize: () => this.#bytes as string,
      deserialize: () => ({}),
    })
  }

  /** Returns after the bytes are on disk; their name is after `flush`. Throws the system's error, or ShortWrite. */
  write(bytes: Buffer): void {
    // under a Snap variable, which terminals of snap-packaged programs hand on, conf gives up writing atomically
    delete process.env['SNAP']
    mkdirSync(this.#folder, { recursive: true, mode: 0o700 })
    // where nothing can be written, the writer below conf tries for a second before it says so, and all wait for it
    accessSync(this.#folder, constants.W_OK)
    this.#bytes = bytes
    try {
      this.#conf.store = NOTHING_TO_KEEP
    } finally {
      this.#bytes = '{}'
    }
    // a nearly full disk may take only the first part of one write, and the writer below conf does not look
    if (statSync(this.path).size !== bytes.length) throw new ShortWrite()
  }

  /** A whole text, lasting when this returns. */
  writeText(text: string): void {
    this.write(Buffer.from(text))
    this.flush()
  }

  /** Makes the name, and all others given in this folder, last through a power cut. */
  flush(): void {
    syncFolder(this.#folder)
  }
}

/** conf reads all of the old file before a write, to carry over notes of its own: with these it has them, and does not. */
const NOTHING_TO_KEEP = { __internal__: {} }

export class ShortWrite extends Error {
  readonly code = 'ENOSPC'
}

/** Some systems cannot open folders; there the rename alone must do. */
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
