import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Call } from '#core/contract/contract'
import { archiveOf, openArchive } from '#core/documents/archive'
import { sentence } from '#core/messages/sentence'
import { good, removeFolder, startProgram, tempFolder } from '../contract/program'
import { newId, product, site } from '../contract/sample-site'
import { listing } from './storage/files'

/** Names that mean something to a file system, a shell, a screen or a program. Windows keeps CON, AUX and NUL for devices. */
const HOSTILE = [
  '../../etc/passwd',
  '..\\..\\boot.ini',
  '/etc/passwd',
  'C:\\Windows\\x',
  'a\u0000b',
  'CON',
  'aux',
  'nul.txt',
  'trailing dots...',
  ' spaces ',
  '\u202Etxt.exe',
  '\u2066hidden\u2069',
  '😀👩‍🍳🏳️‍🌈',
  '<script>alert(1)</script>',
  '"; rm -rf / #',
  '%2e%2e%2f',
  '__proto__',
  'constructor',
  'toString',
  '.',
  '..',
  '-rf',
  '~',
  'x'.repeat(200),
] as const

let root = ''
let call: Call
let close: () => void
beforeEach(() => {
  root = tempFolder()
  const { call: made, program } = startProgram(join(root, 'data'))
  call = made
  close = () => program.close()
})
afterEach(() => {
  close()
  removeFolder(root)
})

/** Every file of the program is named by an id, a day or a word of its own. */
const OURS = /^(?:[\w.-]*\/)*[\w.-]+$/u
const nothingStrange = (): void => {
  expect(readdirSync(root)).toEqual(['data'])
  for (const line of listing(join(root, 'data'))) expect(line.replace(/: \d+$/, '')).toMatch(OURS)
}
const asText = (value: object): string => JSON.stringify(value)
const fileOf = (changes: object, products: readonly object[] = []): string =>
  asText({
    format: 'dosewright-site',
    version: 2,
    site: { ...site(), ...changes },
    products,
    instruments: [],
  })

describe.each(HOSTILE)('%j', (name) => {
  it('as the name of a site, a machine or a product is text like any other, and becomes no path', async () => {
    const made = site({ name })
    const named = { ...made, machines: made.machines.map((machine) => ({ ...machine, name })) }
    const text = fileOf(named, [product({ name })])
    const { id } = await good(call('site.import', { text }))
    expect((await good(call('site.open', { id }))).site).toEqual(named)
    const { fileName, text: exported } = await good(call('site.export', { id }))
    expect(fileName).toMatch(/^[^\\/:*?"<>|\p{C}]+\.dosewright\.json$/u)
    expect(fileName).not.toMatch(/^(?:con|aux|nul)\.|^[. -]*\.dosewright/i)
    const archive = archiveOf({ sites: [exported], removed: [], settings: null }).join('')
    const {
      sites: [inArchive = ''],
    } = await good(Promise.resolve(openArchive(archive)))
    expect(await good(call('site.import', { text: inArchive, choice: 'keep-both' }))).toMatchObject({
      name: expect.stringContaining(name.slice(0, 190)),
    })
    await good(call('site.remove', { id }))
    expect(await good(call('sites.removed', {}))).toMatchObject({ sites: [{ id, name }] })
    nothingStrange()
  })

  it('as an id, of the site or of anything in it, is refused in a sentence, and writes nothing', async () => {
    const before = listing(join(root, 'data'))
    const whole = site()
    for (const text of [
      fileOf({ id: name }),
      fileOf({ machines: whole.machines.map((machine) => ({ ...machine, id: name })) }),
      fileOf({}, [{ ...product(), id: name }]),
    ]) {
      const refused = await call('site.import', { text })
      if (refused.ok) throw new Error('was taken')
      expect(sentence(refused.problem)).toMatch(/is not an id of this program/)
    }
    expect(listing(join(root, 'data'))).toEqual(before)
  })

  it('as the name of a document, a copy or a shared file opens nothing', async () => {
    const made = site()
    await good(call('site.create', { site: made }))
    for (const asked of [
      call('site.open', { id: name }),
      call('site.remove', { id: name }),
      call('backups.list', { document: name }),
      call('backups.restore', { document: made.id, copy: name }),
      call('backups.preview', { document: newId(), copy: name }),
      call('shared.take', { file: name }),
    ])
      expect(await asked).toMatchObject({ ok: false })
    expect(existsSync(join(root, 'data', 'sites', `${made.id}.json`))).toBe(true)
    nothingStrange()
  })
})

it('a name of 10,000 characters is refused with the place and the limit', async () => {
  const refused = await call('site.import', { text: fileOf({ name: 'x'.repeat(10_000) }) })
  if (refused.ok) throw new Error('was taken')
  expect(sentence(refused.problem)).toContain('longer than 200 characters')
})
