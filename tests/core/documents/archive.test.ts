import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { archiveOf, filesOf, isArchive } from '#core/documents/archive'
import { decode } from '#core/documents/decode'

const text = (name: string): string =>
  readFileSync(new URL(`../../fixtures/documents/${name}`, import.meta.url), 'utf8')
const files = [text('site-v1-full.json'), text('site-v2-new.json')]

describe('everything in one file', () => {
  it('comes out as it went in', () => {
    const archive = archiveOf(files).join('')
    expect(isArchive(archive)).toBe(true)
    for (const written of [archive, `\uFEFF${archive.replaceAll('\n', '\r\n')}`]) {
      const found = filesOf(written)
      expect(found.ok && found.value.map((file) => JSON.parse(file) as unknown)).toEqual(
        files.map((file) => JSON.parse(file) as unknown),
      )
      if (found.ok)
        for (const [index, file] of found.value.entries())
          expect(decode('site', file)).toEqual(decode('site', files[index] ?? ''))
    }
  })

  it('with something in it that is no site still gives the others', () => {
    const archive = archiveOf([files[0] ?? '', '7', '{"hello": "world"}', files[1] ?? '']).join('')
    const found = filesOf(archive)
    expect(found.ok && found.value.map((file) => decode('site', file).ok)).toEqual([true, false, false, true])
  })

  it('may hold no site at all', () => {
    expect(filesOf(archiveOf([]).join(''))).toEqual({ ok: true, value: [] })
  })

  it.each([
    ['a site file', text('site-v1-full.json'), 'document-foreign'],
    ['a newer archive', '{"format":"dosewright-archive","version":2,"sites":[]}', 'document-newer'],
    ['an archive without sites', '{"format":"dosewright-archive","version":1}', 'document-malformed'],
    ['an archive without a version', '{"format":"dosewright-archive","sites":[]}', 'document-malformed'],
    ['a list', '[]', 'document-foreign'],
    ['no JSON', 'x', 'document-not-json'],
    ['an archive cut short', archiveOf(files).join('').slice(0, 5_000), 'document-not-json'],
  ])('%s is refused', (_what, given, code) => {
    expect(filesOf(given)).toMatchObject({ ok: false, problem: { code } })
  })

  it('is told from a site file by its first words', () => {
    expect(isArchive(text('site-v1-full.json'))).toBe(false)
    expect(isArchive('\uFEFF {"format" : "dosewright-archive"')).toBe(true)
    expect(isArchive('{"note":"\\"format\\":\\"dosewright-archive\\""}')).toBe(false)
  })
})
