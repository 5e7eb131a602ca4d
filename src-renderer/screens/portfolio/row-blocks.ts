import type { ShownRow } from '#core/documents/row-text'

/** Rows asked for together. */
export const BLOCK = 50
/** Rows from the top that are always held: what is printed. */
export const HELD = 500
/** Blocks held besides: some screens to either side. */
const KEPT = 30

export interface Stretch {
  readonly from: number
  readonly count: number
}

/** The rows of a long table that are here, in blocks. Never changed: more rows make a new one. */
export class RowBlocks {
  readonly #blocks: ReadonlyMap<number, readonly ShownRow[]>

  constructor(blocks: ReadonlyMap<number, readonly ShownRow[]> = new Map()) {
    this.#blocks = blocks
  }

  row(index: number): ShownRow | null {
    return this.#blocks.get(Math.floor(index / BLOCK))?.[index % BLOCK] ?? null
  }

  /** With the rows from `from`, the first of a block; blocks far from them are let go. */
  with(from: number, rows: readonly ShownRow[]): RowBlocks {
    const blocks = new Map(this.#blocks)
    const first = Math.floor(from / BLOCK)
    for (let at = 0; at < rows.length; at += BLOCK) blocks.set(first + at / BLOCK, rows.slice(at, at + BLOCK))
    const far = [...blocks.keys()]
      .filter((block) => block * BLOCK >= HELD)
      .toSorted((a, b) => Math.abs(b - first) - Math.abs(a - first))
    for (const block of far.slice(0, Math.max(0, far.length - KEPT))) blocks.delete(block)
    return new RowBlocks(blocks)
  }

  /** The next rows to ask for so that rows `first` to `last` of `total` are here; null when they are. */
  missing(first: number, last: number, total: number): Stretch | null {
    const end = Math.min(last, total)
    let from: number | null = null
    for (let block = Math.floor(Math.max(0, first) / BLOCK); block * BLOCK < end; block += 1) {
      if (!this.#blocks.has(block)) from ??= block * BLOCK
      else if (from !== null) return { from, count: block * BLOCK - from }
      if (from !== null && (block + 1) * BLOCK - from >= 4 * BLOCK) return { from, count: 4 * BLOCK }
    }
    return from === null ? null : { from, count: Math.ceil((end - from) / BLOCK) * BLOCK }
  }
}
