/** Pieces shorter than this are put together anew faster than they are looked up. */
const WORTH_KEEPING = 1_024

/**
 * The bytes of a text that comes in pieces. Long pieces are turned into bytes once, as long as they come back: of a
 * document saved after an edit, nearly all do.
 */
export class Bytes {
  #known = new Map<string, Buffer>()
  #room = Buffer.alloc(0)

  /** Good until the next call, which uses the same room. */
  of(pieces: readonly string[]): Buffer {
    const parts = this.#partsOf(pieces)
    const length = parts.reduce((sum, part) => sum + part.length, 0)
    if (length > this.#room.length) this.#room = Buffer.alloc(Math.ceil(length * 1.2))
    let at = 0
    for (const part of parts) at += part.copy(this.#room, at)
    return this.#room.subarray(0, length)
  }

  /** Gives back the memory. */
  forget(): void {
    this.#known = new Map()
    this.#room = Buffer.alloc(0)
  }

  #partsOf(pieces: readonly string[]): readonly Buffer[] {
    const before = this.#known
    this.#known = new Map()
    const parts: Buffer[] = []
    let short = ''
    for (const piece of pieces) {
      if (piece.length < WORTH_KEEPING) {
        short += piece
        continue
      }
      if (short !== '') parts.push(Buffer.from(short))
      short = ''
      const bytes = before.get(piece) ?? Buffer.from(piece)
      this.#known.set(piece, bytes)
      parts.push(bytes)
    }
    if (short !== '') parts.push(Buffer.from(short))
    return parts
  }
}
