import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { archiveOf, isArchive, openArchive, type Archive } from '#core/documents/archive'
import { decode } from '#core/documents/decode'

const text = (name: string): string =>
  readFileSync(new URL(`../../fixtures/documents/${name}`, import.meta.url), 'utf8')
const files = [text('site-v1-full.json'), text('site-v2-new.json')]
const whole: Archive = {
  sites: files,
  removed: [{ removedAt: '2025-03-02T08:00:00.000Z', text: text('site-v2-full.json') }],
  settings: text('settings-v1.json'),
}
const plain = (one: Archive): unknown => ({
  sites: one.sites.map((file) => JSON.parse(file) as unknown),
  removed: one.removed.map((file) => ({ ...file, text: JSON.parse(file.text) as unknown })),
  settings: one.settings === null ? null : (JSON.parse(one.settings) as unknown),
})
/** An archive with one thing in it that does not belong there. */
const withOne = (change: object): string =>
  JSON.stringify({ ...(JSON.parse(archiveOf(whole).join('')) as object), ...change })

describe('everything in one file', () => {
  it('comes out as it went in: sites, sites taken off the list, settings', () => {
    const archive = archiveOf(whole).join('')
    expect(isArchive(archive)).toBe(true)
    for (const written of [archive, `\uFEFF${archive.replaceAll('\n', '\r\n')}`]) {
      const found = openArchive(written)
      if (!found.ok) throw new Error(JSON.stringify(found.problem))
      expect(plain(found.value)).toEqual(plain(whole))
      for (const [index, file] of found.value.sites.entries())
        expect(decode('site', file)).toEqual(decode('site', files[index] ?? ''))
      expect(decode('settings', found.value.settings ?? '')).toEqual(decode('settings', whole.settings ?? ''))
    }
  })

  it('of version 1 still opens, with its sites and nothing else', () => {
    const found = openArchive(text('archive-v1.json'))
    expect(found.ok && plain(found.value)).toEqual(plain({ sites: files, removed: [], settings: null }))
  })

  it('with something in it that is no site still gives the others', () => {
    const sites = [files[0] ?? '', '7', '{"hello": "world"}', files[1] ?? '']
    const found = openArchive(archiveOf({ ...whole, sites }).join(''))
    expect(found.ok && found.value.sites.map((file) => decode('site', file).ok)).toEqual([
      true,
      false,
      false,
      true,
    ])
  })

  it('may hold nothing at all', () => {
    const nothing = { sites: [], removed: [], settings: null }
    expect(openArchive(archiveOf(nothing).join(''))).toEqual({ ok: true, value: nothing })
  })

  it.each([
    ['a site file', text('site-v1-full.json'), 'document-foreign'],
    ['a newer archive', '{"format":"dosewright-archive","version":3,"sites":[]}', 'document-newer'],
    ['an archive without sites', '{"format":"dosewright-archive","version":1}', 'document-malformed'],
    ['an archive without a version', '{"format":"dosewright-archive","sites":[]}', 'document-malformed'],
    ['one of half a version', withOne({ version: 1.5 }), 'document-malformed'],
    ['one with a part nobody knows', withOne({ surprise: [] }), 'document-malformed'],
    ['one without removed sites', withOne({ removed: undefined }), 'document-malformed'],
    ['one without settings', withOne({ settings: undefined }), 'document-malformed'],
    ['one whose settings are a list', withOne({ settings: [] }), 'document-malformed'],
    ['a removed site without its day', withOne({ removed: [{ file: {} }] }), 'document-malformed'],
    [
      'a removed site of no day',
      withOne({ removed: [{ removedAt: 'soon', file: {} }] }),
      'document-malformed',
    ],
    [
      'a removed site without its file',
      withOne({ removed: [{ removedAt: '2025-03-02T08:00:00Z' }] }),
      'document-malformed',
    ],
    [
      'a removed site with more',
      withOne({ removed: [{ removedAt: '2025-03-02T08:00:00Z', file: {}, more: 1 }] }),
      'document-malformed',
    ],
    ['a list', '[]', 'document-foreign'],
    ['no JSON', 'x', 'document-not-json'],
    ['an archive cut short', archiveOf(whole).join('').slice(0, 5_000), 'document-not-json'],
  ])('%s is refused', (_what, given, code) => {
    expect(openArchive(given)).toMatchObject({ ok: false, problem: { code } })
  })

  it('is told from a site file by its first words', () => {
    expect(isArchive(text('site-v1-full.json'))).toBe(false)
    expect(isArchive('\uFEFF {"format" : "dosewright-archive"')).toBe(true)
    expect(isArchive('{"note":"\\"format\\":\\"dosewright-archive\\""}')).toBe(false)
  })
})
