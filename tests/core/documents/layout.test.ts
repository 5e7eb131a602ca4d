import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { layOut } from '#core/documents/layout'

const WIDTH = 110

/** The rule said plainly: on one line if it fits on what is left of 110 signs, else part by part. Tried anew at every level. */
function plainly(value: unknown, indent = '', used = 0): string {
  const flat = onOneLine(value, WIDTH - indent.length - used)
  if (flat !== null) return flat
  const inner = `${indent}  `
  if (Array.isArray(value))
    return `[\n${value.map((item) => `${inner}${plainly(item, inner)}`).join(',\n')}\n${indent}]`
  const lines = Object.entries(value as object).map(([key, part]) => {
    const label = `${JSON.stringify(key)}: `
    return `${inner}${label}${plainly(part, inner, label.length)}`
  })
  return `{\n${lines.join(',\n')}\n${indent}}`
}

function onOneLine(value: unknown, room: number): string | null {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const list = Array.isArray(value)
  const parts: string[] = []
  let length = 4
  for (const [key, part] of list ? value.entries() : Object.entries(value)) {
    if (length > room) return null
    const text = onOneLine(part, room - length)
    if (text === null) return null
    const shown = list ? text : `${JSON.stringify(key)}: ${text}`
    parts.push(shown)
    length += shown.length + 2
  }
  if (parts.length === 0) return list ? '[]' : '{}'
  if (length - 2 > room) return null
  return list ? `[${parts.join(', ')}]` : `{ ${parts.join(', ')} }`
}

const { node } = fc.letrec<{ node: unknown }>((tie) => ({
  node: fc.oneof(
    { depthSize: 'medium' },
    fc.constantFrom(1, -2.5, null, true, 'é"\n', 'x'.repeat(30), 'x'.repeat(120), [], {}),
    fc.array(tie('node'), { maxLength: 6 }),
    fc.dictionary(fc.constantFrom('a', 'bbbbbbbbbbbb', 'c'.repeat(40), '1'), tie('node'), { maxKeys: 4 }),
  ),
}))

describe('the layout of a document', () => {
  it('is the one that trying every part anew at every level gives', () => {
    fc.assert(
      fc.property(fc.oneof(node, fc.jsonValue({ maxDepth: 6 })), (value) => {
        expect(layOut(value)).toBe(plainly(value))
      }),
      { numRuns: 3000 },
    )
  })

  it('is JSON of the same value', () => {
    fc.assert(
      fc.property(node, (value) => {
        expect(JSON.parse(layOut(value))).toEqual(value)
      }),
    )
  })
})
