import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decodeGlassFile, encodeGlassFile } from '#core/documents/glass-file'
import { FORMATS } from '#core/documents/formats'
import { siteFile } from '#core/documents/site-schema'
import { site as siteOf } from '#tests/support/make-site'
import type { GlassCheck } from '#core/records/index'
import { check } from '#tests/support/glass-check'

const SITE = '6f1b2a52-0d0f-4b3e-9f5e-1f3f6a1c7b01'
const text = encodeGlassFile(SITE, 'Harbourview Hotel bar', check)

/** The same file with one place of it changed. */
const withPlace = (path: readonly string[], value: unknown): string => {
  const file = JSON.parse(text) as Record<string, unknown>
  let node = file
  for (const key of path.slice(0, -1)) node = node[key] as Record<string, unknown>
  node[path.at(-1) ?? ''] = value
  return JSON.stringify(file)
}

describe('the small file that carries a glass check to the rep', () => {
  it('comes back as it went', () => {
    const read = decodeGlassFile(text)
    expect(read.ok && read.value.check).toEqual(check)
    expect(read.ok && read.value.siteId).toBe(SITE)
    expect(decodeGlassFile(`\uFEFF${text}`).ok).toBe(true)
    expect(text.length).toBeLessThan(1000)
  })

  it.each([
    ['not JSON', 'glasses', 'document-not-json'],
    ['another format', '{"format":"something-else"}', 'document-foreign'],
    ['a list', '[]', 'document-foreign'],
    ['a newer version', withPlace(['version'], 2), 'document-newer'],
    ['no version', withPlace(['version'], undefined), 'document-malformed'],
    [
      'an answer that is none',
      withPlace(['check', 'answers'], [{ evidence: 'x', answer: 'maybe' }]),
      'document-malformed',
    ],
    ['a field of nobody', withPlace(['check', 'price'], '1'), 'document-malformed'],
    ['a field missing', withPlace(['check', 'seen'], undefined), 'document-malformed'],
    ['an id that is none', withPlace(['check', 'id'], '../x'), 'document-malformed'],
    ['a day for an instant', withPlace(['check', 'at'], '2026-03-10'), 'document-malformed'],
    [
      'ten thousand answers',
      withPlace(
        ['check', 'answers'],
        Array.from({ length: 10_000 }, () => ({ evidence: 'x', answer: 'no' })),
      ),
      'document-too-large',
    ],
    ['a prototype name', text.replace('"check"', '"__proto__"'), 'document-malformed'],
  ] as const)('is refused with its reason when it is %s', (_name, bad, code) => {
    const read = decodeGlassFile(bad)
    expect(read.ok).toBe(false)
    expect(!read.ok && read.problem.code).toBe(code)
  })

  it('lets nothing through that the site file would not hold', () => {
    const any = fc.oneof(
      fc.constantFrom<unknown>(
        null,
        '',
        'yes',
        'glass',
        'all',
        'new',
        7,
        true,
        [],
        {},
        [null],
        ['glass'],
        '2026-02-30T09:00:00Z',
        '2026-03-10T09:00:00Z',
      ),
      fc.string({ maxLength: 300 }),
    )
    const places = Object.keys(check) as readonly (keyof GlassCheck)[]
    fc.assert(
      fc.property(fc.constantFrom(...places), any, (place, value) => {
        const read = decodeGlassFile(withPlace(['check', place], value))
        if (!read.ok) return
        const site = siteOf({ id: SITE, glassChecks: [read.value.check] })
        const kept = siteFile.safeParse({
          format: 'dosewright-site',
          version: FORMATS.site.version,
          site,
          products: [],
          instruments: [],
        })
        expect(kept.error?.issues ?? []).toEqual([])
      }),
      { numRuns: 2000 },
    )
  })
})
