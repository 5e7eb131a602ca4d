import {
  existsSync,
  linkSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  unlinkSync,
  type Stats,
} from 'node:fs'
import { basename, join } from 'node:path'
import type { DocumentName } from '#core/contract/ports'
import { fail, ok, type Outcome } from '#core/outcome'
import type { Problem } from '#core/problem'
import { AtomicJson, ShortWrite } from './atomic-json'
import { Bytes } from './bytes'
import type { Codec } from './codec'
import { copyInPlace, linkInPlace, moveAside, stamp, writeInPlace } from './file-moves'
import { notSaved } from './not-saved'
import { readText } from './read-text'

export interface Place {
  readonly root: string
  readonly folder: 'sites' | 'library'
  /** file name without ending: a site's id in lower case, or the name of a library document */
  readonly key: string
}

export const placeOf = (root: string, name: DocumentName): Place =>
  name.kind === 'site'
    ? { root, folder: 'sites', key: name.id.toLowerCase() }
    : { root, folder: 'library', key: name.kind }

/**
 * One document on disk: the file, its last good version beside it, and what became of damaged ones. Reading happens
 * once, on opening; afterwards the caller's memory is the truth and this only writes.
 */
export class DocumentFile<T> {
  readonly #place: Place
  readonly #codec: Codec<T>
  readonly #now: () => string
  readonly path: string
  readonly lastGoodPath: string
  readonly #newestPath: string
  readonly #beforePath: string
  #writer: AtomicJson | null = null
  /** version of the file on disk, while it is older than what is written now */
  #olderVersion: number | null = null
  /** the file as this program last saw it, to notice another hand */
  #seen: string | null = null
  /** runs while the newest version has no copy of its own */
  #ownCopy: NodeJS.Timeout | null = null
  readonly #bytes = new Bytes()

  constructor(place: Place, codec: Codec<T>, now: () => string) {
    this.#place = place
    this.#codec = codec
    this.#now = now
    this.path = join(place.root, place.folder, `${place.key}.json`)
    this.lastGoodPath = join(place.root, place.folder, `${place.key}.last-good.json`)
    this.#newestPath = join(place.root, place.folder, `${place.key}.newest.json`)
    this.#beforePath = join(place.root, place.folder, `${place.key}.before.json`)
  }

  /** The document; `not-found`, `document-newer` (untouched), or `document-damaged` after setting the file aside. */
  read(): Outcome<T> {
    const text = readText(this.path)
    if (text === null) return fail(this.#absence())
    const decoded = text.ok ? this.#codec.decode(text.value) : text
    if (decoded.ok) {
      const { document, from } = decoded.value
      this.#olderVersion = from < this.#codec.version ? from : null
      this.#seen = fingerprint(this.path)
      drop(this.#beforePath)
      this.#keepLastGood(() => {
        if (text.ok && !this.#keeps(text.value)) copyInPlace(this.path, this.lastGoodPath)
        drop(this.#newestPath)
      })
      return ok(document)
    }
    if (decoded.problem.code === 'document-newer' || decoded.problem.code === 'unavailable') return decoded
    const setAside = this.#setAside()
    // killed between a short write and its undoing: what was there before is the last that was acknowledged
    if (setAside !== null && existsSync(this.#beforePath)) {
      renameSync(this.#beforePath, this.path)
      return this.read()
    }
    return fail({ code: 'document-damaged', document: this.#place.key, setAside })
  }

  /** Whether there is a file that this program neither wrote nor read. */
  replacedByOthers(): boolean {
    const now = fingerprint(this.path)
    return now !== null && now !== this.#seen
  }

  /** Writes and returns only when the document is safe on disk. On failure the file is what it was before. */
  write(document: T): Outcome<void> {
    return this.writeBytes(this.#bytes.of(this.#codec.encode(document)))
  }

  /** The same for a document that was encoded elsewhere. */
  writeBytes(bytes: Buffer): Outcome<void> {
    try {
      this.#guardOthers()
      this.#holdBefore()
      this.#writer ??= new AtomicJson(join(this.#place.root, this.#place.folder), this.#place.key)
      this.#writer.write(bytes)
    } catch (error) {
      if (error instanceof ShortWrite) this.#undoShortWrite()
      return notSaved(error)
    }
    // from here on the document is saved: whatever else fails must not turn that into a refusal
    this.#olderVersion = null
    this.#seen = fingerprint(this.path)
    drop(this.#beforePath)
    this.#keepLastGood(() => this.#hold(bytes))
    this.#writer.flush()
    return ok(undefined)
  }

  /** Brings the last good version up to the newest one now, before the program ends. */
  settle(): void {
    if (this.#ownCopy === null) return
    this.#stopWaiting()
    // after another hand was at the file, or took it away, the second name is all there is of what was saved
    if (fingerprint(this.path) !== this.#seen) return
    this.#keepLastGood(() => {
      copyInPlace(this.path, this.lastGoodPath)
      drop(this.#newestPath)
    })
  }

  /** Before a document is let go of: what only makes its next write quicker goes with it. */
  rest(): void {
    this.settle()
    this.#bytes.forget()
  }

  /** The last good version and where it lies, or null when there is none that can be read. */
  readLastGood(): { readonly document: T; readonly path: string } | null {
    for (const path of [this.#newestPath, this.lastGoodPath]) {
      const text = readText(path)
      const decoded = text?.ok === true ? this.#codec.decode(text.value) : null
      if (decoded?.ok === true) return { document: decoded.value.document, path }
    }
    return null
  }

  /** The file, or what of it is left. */
  left(): string | null {
    return [this.path, this.#newestPath, this.lastGoodPath].find((path) => existsSync(path)) ?? null
  }

  /** What is kept of damaged files, newest last, as paths inside the data folder. */
  damaged(): readonly string[] {
    return readdirSync(join(this.#place.root, 'damaged'))
      .filter((file) => file.startsWith(`${this.#place.key}.`))
      .toSorted()
      .map((file) => `damaged/${file}`)
  }

  /** After the document was taken away: nothing of it is offered or listed any more. Damaged files stay, as `dismissed`. */
  forget(): void {
    this.#stopWaiting()
    for (const path of [this.#newestPath, this.lastGoodPath, this.#beforePath]) rmSync(path, { force: true })
    this.#seen = null
    this.#olderVersion = null
    for (const file of this.damaged())
      moveAside(join(this.#place.root, file), (suffix) =>
        join(this.#place.root, 'damaged', `dismissed-${basename(file, '.json')}${suffix}.json`),
      )
  }

  /** Before a write: keeps the original of an older version, and a file that another hand put there meanwhile. */
  #guardOthers(): void {
    const { root, key } = this.#place
    if (this.#olderVersion !== null) {
      const original = join(root, 'older-versions', `${key}.v${this.#olderVersion}.json`)
      if (!existsSync(original)) copyInPlace(this.path, original)
    }
    if (this.replacedByOthers() && this.#setAside() === null) throw new CannotSetAside()
  }

  #setAside(): string | null {
    const { root, key } = this.#place
    try {
      const path = moveAside(this.path, (suffix) =>
        join(root, 'damaged', `${key}.${stamp(this.#now())}${suffix}.json`),
      )
      return `damaged/${basename(path)}`
    } catch {
      // a folder that cannot be written: the damaged file stays where it is, and nothing is written over it either
      return null
    }
  }

  #absence(): Problem {
    const setAside = this.damaged().at(-1) ?? null
    return setAside === null && this.left() === null
      ? { code: 'not-found', what: this.#place.key }
      : { code: 'document-damaged', document: this.#place.key, setAside }
  }

  /** A second name for the version on disk, which takes no space, so that a write cut short can be undone. */
  #holdBefore(): void {
    try {
      linkSync(this.path, this.#beforePath)
    } catch {
      // one is left over; or there is no file yet, or no links: then the last good version serves
      linked(this.path, this.#beforePath)
    }
  }

  #undoShortWrite(): void {
    try {
      if (existsSync(this.#beforePath)) renameSync(this.#beforePath, this.path)
      else if (existsSync(this.#newestPath)) renameSync(this.#newestPath, this.path)
      else if (existsSync(this.lastGoodPath)) copyInPlace(this.lastGoodPath, this.path)
      else rmSync(this.path, { force: true })
      this.#seen = fingerprint(this.path)
    } catch {
      // the disk went altogether: the next look at the file finds it strange and brings the version before back
      this.#seen = null
    }
  }

  /**
   * Gives the version just saved a second name. That is quick and takes no space, and it outlives the file's deletion,
   * but not damage done inside the file: within a second the last good version becomes a copy of it.
   */
  #hold(bytes: Buffer): void {
    if (existsSync(this.lastGoodPath) && linked(this.path, this.#newestPath)) {
      this.#ownCopy ??= setTimeout(() => this.settle(), OWN_COPY_AFTER).unref()
      return
    }
    // from memory and not from the file: that may have been deleted in this very moment
    writeInPlace(bytes, this.lastGoodPath)
    drop(this.#newestPath)
  }

  #stopWaiting(): void {
    if (this.#ownCopy !== null) clearTimeout(this.#ownCopy)
    this.#ownCopy = null
  }

  /**
   * Whether the last good version is this text. A kill or a full disk may come between the file and that version, and
   * times would not tell after a clock was set back.
   */
  #keeps(text: string): boolean {
    const kept = readText(this.lastGoodPath)
    return kept !== null && kept.ok && kept.value === text
  }

  /** A last good version that cannot be kept costs nothing now: the file itself is whole. The next write tries again. */
  #keepLastGood(keep: () => void): void {
    try {
      keep()
    } catch {
      // the disk is full or gone
    }
  }
}

/** ms; saves that come meanwhile share one copy */
const OWN_COPY_AFTER = 1_000

/** False on file systems without links, and when the file is gone. */
function linked(path: string, name: string): boolean {
  try {
    linkInPlace(path, name)
    return true
  } catch {
    return false
  }
}

/** Takes away a second name. One that stays for now is taken away by the next start or write. */
function drop(path: string): void {
  try {
    unlinkSync(path)
  } catch {
    // there is none
  }
}

class CannotSetAside extends Error {
  readonly code = 'EACCES'
}

/** Changes when the file is replaced or written to by anybody. */
function fingerprint(path: string): string | null {
  const stats: Stats | undefined = statSync(path, { throwIfNoEntry: false })
  return stats === undefined ? null : `${stats.ino}:${stats.size}:${stats.mtimeMs}`
}
