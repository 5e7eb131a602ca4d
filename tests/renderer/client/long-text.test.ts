import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bodyInSlices, longTextIn, textOf } from '#renderer/client/long-text.ts'

const now = (): Promise<void> => Promise.resolve()
/** three slices and a bit */
const long = (part: string): string => part.repeat(Math.ceil(3_100_000 / part.length))

describe('a call that carries a long text', () => {
  it.each([
    ['letters and quotes', long('a"\\\n')],
    ['signs that take two halves, parted by a slice', `x${long('\u{1F9FD}')}`],
    ['signs of several bytes', long('Spül-ßé')],
    ['a half that stands alone', `${long('a')}\uD83E`],
  ])('reads back as what was sent: %s', async (_what, text) => {
    const input = { text, choice: 'merge', prefer: 'mine' }
    const body = await bodyInSlices(input, 'text', now)
    expect(JSON.parse(await body.text())).toEqual(input)
    expect(JSON.parse(await (await bodyInSlices({ text }, 'text', now)).text())).toEqual({ text })
  })

  it('lets the window answer between two slices', async () => {
    let breaths = 0
    await bodyInSlices({ text: long('abc') }, 'text', async () => void (breaths += 1))
    expect(breaths).toBe(4)
  })

  it('is told from one that does not', () => {
    expect(longTextIn({ id: 'x', text: long('a') })).toBe('text')
    for (const input of [{}, null, 'text', { text: 'short' }, { changes: [long('a')] }])
      expect(longTextIn(input)).toBeNull()
  })
})

describe('the text of a file', () => {
  it('is the same read in slices as read at once, whatever the bytes', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uint8Array({ maxLength: 40 }),
        fc.integer({ min: 0, max: 40 }),
        async (bytes, before) => {
          // put across the end of the first slice
          const file = new Blob([new Uint8Array(1_000_000 - before).fill(97), new Uint8Array(bytes), 'end'])
          expect(await textOf(file)).toBe(await file.text())
        },
      ),
      { numRuns: 30 },
    )
    const marked = new Blob([new Uint8Array([0xef, 0xbb, 0xbf]), '{}'])
    expect(await textOf(marked)).toBe(await marked.text())
  })
})
