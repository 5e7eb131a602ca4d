import { appendFileSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { randomUUID } from 'node:crypto'
import { dirname } from 'node:path'
import { crc32 } from 'node:zlib'
import type { Entry, Row } from './entry'

/** Lines that may be there beyond one a site before the file is written anew. */
const SPARE_LINES = 500

/**
 * The notes on disk: a heading, then a line for each site, `checksum TAB entry TAB row`. What is new is put at the end
 * and counts before what stands earlier. All of it can be made again from the site files, so nothing here waits for the
 * disk, a line that is not whole is skipped, and a file of another version or program is not read.
 */
export class IndexFile {
  readonly #path: string
  readonly #heading: string
  #lines = 0

  constructor(path: string, program: string) {
    this.#path = path
    this.#heading = `dosewright-index 4 ${program}\n`
  }

  read(): readonly Entry[] {
    this.#lines = 0
    const bytes = readOrNull(this.#path)
    if (bytes === null || bytes.subarray(0, this.#heading.length).toString('latin1') !== this.#heading)
      return []
    const found = new Map<string, Entry>()
    let from = this.#heading.length
    for (let end = bytes.indexOf(10, from); end !== -1; end = bytes.indexOf(10, from)) {
      const entry = parseLine(bytes.subarray(from, end))
      if (entry !== null) found.set(entry.key, entry)
      this.#lines += 1
      from = end + 1
    }
    // a last line without an end would swallow the next one
    if (from < bytes.length) this.#lines = Number.POSITIVE_INFINITY
    return [...found.values()]
  }

  /** Adds what is new; `all` is asked for when the file is to be written anew. A disk that will not take it is no matter. */
  add(entries: readonly Entry[], all: () => readonly Entry[]): void {
    if (entries.length === 0) return
    try {
      const whole = this.#lines === 0 || statSync(this.#path, { throwIfNoEntry: false }) === undefined
      const known = all()
      if (whole || this.#lines + entries.length > 2 * known.length + SPARE_LINES) this.#writeAll(known)
      else {
        appendFileSync(this.#path, entries.map(lineOf).join(''))
        this.#lines += entries.length
      }
    } catch {
      // half a line may stand at the end: the next time all is written
      this.#lines = 0
    }
  }

  #writeAll(entries: readonly Entry[]): void {
    mkdirSync(dirname(this.#path), { recursive: true, mode: 0o700 })
    const half = `${this.#path}.tmp-${randomUUID()}`
    try {
      writeFileSync(half, [this.#heading, ...entries.map(lineOf)].join(''), { mode: 0o600 })
      renameSync(half, this.#path)
      this.#lines = entries.length
    } catch (error) {
      rmSync(half, { force: true })
      throw error
    }
  }
}

/** JSON has neither tab nor line end in it. */
function lineOf({ row, ...entry }: Entry): string {
  const { text, ...rest } = row ?? { text: '' }
  const head = JSON.stringify({ ...entry, ...rest })
  const body = `${head}\t${text}`
  return `${crc32(Buffer.from(body)).toString(16).padStart(8, '0')}\t${body}\n`
}

function parseLine(line: Buffer): Entry | null {
  const body = line.subarray(9)
  if (line[8] !== 9 || Number.parseInt(line.subarray(0, 8).toString('latin1'), 16) !== crc32(body))
    return null
  const tab = body.indexOf(9)
  try {
    const { asOf, basis, outlook, ...entry } = JSON.parse(body.subarray(0, tab).toString('utf8')) as Omit<
      Entry,
      'row'
    > &
      Partial<Row>
    const row =
      asOf === undefined || basis === undefined || outlook === undefined
        ? null
        : { asOf, basis, outlook, text: body.subarray(tab + 1).toString('utf8') }
    return { ...entry, row }
  } catch {
    return null
  }
}

function readOrNull(path: string): Buffer | null {
  try {
    return readFileSync(path)
  } catch {
    return null
  }
}
