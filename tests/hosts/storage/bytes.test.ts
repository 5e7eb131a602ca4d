import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Bytes } from '#main/storage/bytes'

const piece = fc.oneof(
  fc.string({ maxLength: 20, unit: 'grapheme' }),
  fc
    .tuple(fc.string({ minLength: 1, maxLength: 3, unit: 'grapheme' }), fc.integer({ min: 400, max: 3000 }))
    .map(([unit, times]) => unit.repeat(times)),
)

describe('the bytes of a text in pieces', () => {
  it('are those of the whole text, whatever was asked before, in whatever order pieces come back', () => {
    const pool = fc.array(piece, { minLength: 1, maxLength: 8 })
    const picks = fc.array(fc.array(fc.nat(), { maxLength: 12 }), { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(pool, picks, (pieces, texts) => {
        const bytes = new Bytes()
        for (const [at, picked] of texts.entries()) {
          const text = picked.map((one) => pieces[one % pieces.length] ?? '')
          expect(bytes.of(text).equals(Buffer.from(text.join('')))).toBe(true)
          if (at === 3) bytes.forget()
        }
      }),
      { numRuns: 300 },
    )
  })
})
