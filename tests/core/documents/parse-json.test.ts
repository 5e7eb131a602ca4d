import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseJson, readJson } from '#core/documents/parse-json'
import { quickJson } from '#core/documents/quick-json'

const accepts = (text: string): boolean => {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

describe('reading JSON', () => {
  it('gives what JSON.parse gives for any JSON value', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), fc.constantFrom(0, 2), (value, spaces) => {
        const text = JSON.stringify(value, null, spaces)
        fc.pre(!/"(?:__proto__|constructor|prototype)":/.test(text))
        expect(parseJson(text)).toEqual({ ok: true, value: JSON.parse(text) })
      }),
    )
  })

  it('takes exactly the number, text and word forms JSON.parse takes', () => {
    const texts = [
      '0',
      '-0',
      '01',
      '1.',
      '.5',
      '1e5',
      '1E+05',
      '1e',
      '+1',
      '0x10',
      'NaN',
      'Infinity',
      '1_0',
      '-',
    ]
    texts.push(
      '"a"',
      '"\\u00e9\\n\\/"',
      '"\\x"',
      '"\\u12"',
      '"',
      '"a\nb"',
      '"a\u0000"',
      "'a'",
      '"\\ud800"',
      '"tab\t"',
    )
    texts.push(
      'true',
      'tru',
      'nulls',
      'undefined',
      '',
      ' ',
      '[1,]',
      '[,1]',
      '{"a":1,}',
      '{a:1}',
      '{"a" 1}',
      '[1 2]',
    )
    texts.push('[]', '{}', ' [ ] ', '1 2', '\u00a01', '\uFEFF1', '[1', '{"a":', '// x\n1')
    for (const text of texts) expect([text, parseJson(text).ok]).toEqual([text, accepts(text)])
  })

  it('takes a text with one sign changed if and only if JSON.parse takes it', () => {
    const base = JSON.stringify({ a: [1, -2.5e3, 'x"y', null, true], b: { c: 'é', d: [] } })
    fc.assert(
      fc.property(fc.nat(base.length), fc.string({ minLength: 0, maxLength: 2 }), (at, put) => {
        const text = base.slice(0, at) + put + base.slice(at + 1)
        const ours = parseJson(text)
        // a key that now stands twice is the one difference wanted
        if (!ours.ok && ours.problem.code === 'document-malformed') return
        expect(ours.ok).toBe(accepts(text))
      }),
      { numRuns: 2000 },
    )
  })

  it('names the line and column where the text stops being JSON', () => {
    expect(parseJson('{\n  "a": 1,\n  "b" 2\n}')).toEqual({
      ok: false,
      problem: { code: 'document-not-json', place: 'line 3, column 7' },
    })
    expect(parseJson('')).toMatchObject({ problem: { place: 'line 1, column 1' } })
  })

  it('refuses a key that stands twice, because one of the two values would be lost', () => {
    expect(parseJson('{"name": "A", "visits": [], "name": "B"}')).toMatchObject({
      ok: false,
      problem: {
        code: 'document-malformed',
        place: 'line 1, column 29',
        reason: 'has the part "name" twice',
      },
    })
  })

  it('refuses keys that reach a prototype, also when they are written with escapes', () => {
    for (const key of ['__proto__', 'constructor', 'prototype', '\\u005f_proto__'])
      expect(parseJson(`{"a": {"${key}": {"admin": true}}}`)).toMatchObject({
        ok: false,
        problem: { code: 'document-malformed' },
      })
    expect(({} as Record<string, unknown>)['admin']).toBeUndefined()
  })

  it('refuses a million brackets within a second instead of running out of stack', () => {
    const started = performance.now()
    for (const bracket of ['[', '{"a":'])
      expect(parseJson(bracket.repeat(1_000_000))).toMatchObject({ problem: { code: 'document-malformed' } })
    expect(performance.now() - started).toBeLessThan(1000)
  })

  it('says the same whether the engine reads the text or it is read sign by sign', () => {
    const key = fc.constantFrom('a', 'b', '\\u0061', 'a\\"', 'x:', '__proto__', 'constr\\u0075ctor', ' ', '1')
    const space = fc.constantFrom('', '', ' ', '\n\t', '\r\n')
    const { node } = fc.letrec<{ node: string }>((tie) => ({
      node: fc.oneof(
        { depthSize: 'small' },
        fc.constantFrom(
          '1',
          '-2.5e3',
          'null',
          'true',
          '"a"',
          '"b\\":1"',
          '"c : d"',
          '"\\u0022:"',
          '":"',
          'x',
        ),
        fc.array(tie('node'), { maxLength: 4 }).map((items) => `[${items.join(',')}]`),
        fc
          .array(fc.tuple(key, space, space, tie('node')), { maxLength: 4 })
          .map((parts) => `{${parts.map(([k, s, t, v]) => `${s}"${k}"${t}:${s}${v}`).join(',')}}`),
      ),
    }))
    fc.assert(
      fc.property(node, space, (text, around) => {
        const whole = around + text + around
        expect(parseJson(whole)).toEqual(readJson(whole))
      }),
      { numRuns: 3000 },
    )
  })

  it('leaves to the engine a text of ours, one with colons in its words, and none with a key twice', () => {
    expect(quickJson('{ "at": "T08:10", "note": "air : none", "a": [{ "b": "\\":" }] }')).toBeNull()
    expect(quickJson('{ "at": "T08:10", "note": "air : none", "a": [{ "b": 1 }] }')).not.toBeNull()
    expect(quickJson('{ "a" : 1, "a": 2 }')).toBeNull()
    expect(quickJson('{ "a": 1, "a": 2 }')).toBeNull()
    expect(quickJson('{ "a": 1, "\\u0061": 2 }')).toBeNull()
    expect(quickJson(`${'['.repeat(60)}${']'.repeat(60)}`)).toBeNull()
  })
})
