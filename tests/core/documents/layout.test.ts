import { readFileSync } from 'node:fs'
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { apply } from '#core/documents/changes'
import { check, decode } from '#core/documents/decode'
import { encode } from '#core/documents/encode'
import { FORMATS } from '#core/documents/formats'
import { layOut } from '#core/documents/layout'
import { good } from '../../support/outcomes'

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

  it('is never that of the document before the edit, wherever the edit was made', () => {
    const text = readFileSync(new URL('../../fixtures/documents/site-v1-full.json', import.meta.url), 'utf8')
    const paths = placesOf(JSON.parse(text))
    const changes = fc.array(
      fc.tuple(fc.constantFrom(...paths), fc.constantFrom('3.5', 'a note', '2026-01-31')),
      { minLength: 1, maxLength: 4 },
    )
    let saved = 0
    fc.assert(
      fc.property(changes, (all) => {
        let document: unknown = good(decode('site', text)).document
        for (const [path, value] of all) {
          document = apply(document, [{ op: 'set', path, value }])?.document
          const checked = check(FORMATS.site, document)
          if (!checked.ok) return
          saved += 1
          expect(encode('site', checked.value)).toBe(encode('site', structuredClone(checked.value)))
          document = checked.value
        }
      }),
      { numRuns: 300 },
    )
    expect(saved).toBeGreaterThan(50)
  })
})

/** The path of every text in a value. */
function placesOf(node: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof node === 'string') return [path]
  if (typeof node !== 'object' || node === null) return []
  return Array.isArray(node)
    ? node.flatMap((item, index) => placesOf(item, [...path, index]))
    : Object.entries(node).flatMap(([key, part]) => placesOf(part, [...path, key]))
}
