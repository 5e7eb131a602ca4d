import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { decodeArchive, encodeArchive, isArchive } from '#core/documents/archive'
import { decode } from '#core/documents/decode'
import type { SiteFile } from '#core/documents/site-schema'

const text = (name: string): string =>
  readFileSync(new URL(`../../fixtures/documents/${name}`, import.meta.url), 'utf8')
const file = (name: string): SiteFile => {
  const decoded = decode('site', text(name))
  if (!decoded.ok) throw new Error(name)
  return decoded.value.document
}
const files = [file('site-v1-full.json'), file('site-v2-new.json')]

describe('everything in one file', () => {
  it('comes out as it went in', () => {
    const archive = encodeArchive(files)
    expect(isArchive(archive)).toBe(true)
    expect(decodeArchive(archive)).toEqual({ ok: true, value: files.map((value) => ({ ok: true, value })) })
    expect(decodeArchive(`\uFEFF${archive.replaceAll('\n', '\r\n')}`)).toMatchObject({ ok: true })
  })

  it('with one site that does not hold still gives the others', () => {
    const [first, second] = files
    const archive = JSON.stringify({
      format: 'dosewright-archive',
      version: 1,
      sites: [first, { ...second, version: 9 }, 7, second],
    })
    expect(decodeArchive(archive)).toMatchObject({
      ok: true,
      value: [
        { ok: true },
        { ok: false, problem: { code: 'document-newer' } },
        { ok: false, problem: { code: 'document-foreign' } },
        { ok: true },
      ],
    })
  })

  it.each([
    ['a site file', text('site-v1-full.json'), 'document-foreign'],
    ['a newer archive', '{"format":"dosewright-archive","version":2,"sites":[]}', 'document-newer'],
    ['an archive without sites', '{"format":"dosewright-archive","version":1}', 'document-malformed'],
    ['an archive without a version', '{"format":"dosewright-archive","sites":[]}', 'document-malformed'],
    ['a list', '[]', 'document-foreign'],
    ['no JSON', 'x', 'document-not-json'],
  ])('%s is refused', (_what, given, code) => {
    expect(decodeArchive(given)).toMatchObject({ ok: false, problem: { code } })
  })

  it('is told from a site file by its first words', () => {
    expect(isArchive(text('site-v1-full.json'))).toBe(false)
    expect(isArchive('\uFEFF {"format" : "dosewright-archive"')).toBe(true)
    expect(isArchive('{"note":"\\"format\\":\\"dosewright-archive\\""}')).toBe(false)
  })
})
