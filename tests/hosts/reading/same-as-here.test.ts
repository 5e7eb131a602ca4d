import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { Settled, Settling } from '#core/contract/ports'
import type { SiteFile } from '#core/documents/site-schema'
import { sentence } from '#core/messages/sentence'
import type { Outcome } from '#core/outcome'
import { readHere } from '#core/services/arrived'
import { parseBody } from '#main/reading/parse-body'
import { ReaderOnThread, WORTH_A_THREAD } from '#main/reading/thread'
import { bigSite } from '../../bench/big-site'
import { removeFolder, tempFolder } from '../../contract/program'
import { good } from '../../support/outcomes'
import { needBuild, OUT } from '../launch/built-program'
import { textOf } from './large-file'

beforeAll(needBuild, 180_000)

let root: string
let reader: ReaderOnThread
beforeEach(() => {
  root = tempFolder()
  mkdirSync(join(root, 'sites'))
  reader = new ReaderOnThread(root, join(OUT, 'main', 'reading.js'))
})
afterEach(() => {
  reader.close()
  removeFolder(root)
})

const theirs = bigSite(80, 5)
const text = textOf(theirs)
const put = (changes: (text: string) => string): string => {
  const changed = changes(text)
  if (changed === text) throw new Error('nothing was damaged')
  return changed
}
const end = text.lastIndexOf('}')

/** Each damage, in a file large enough to go to the thread. */
const DAMAGES: Readonly<Record<string, string>> = {
  'cut short': text.slice(0, -100),
  'a sign too many': `${text}]`,
  'not JSON at all': 'x'.repeat(WORTH_A_THREAD),
  'a key twice': `${text.slice(0, end)},"version":2}`,
  'a prototype name': `${text.slice(0, end)},"__proto__":{}}`,
  'nested without end': `${text.slice(0, end)},"more":${'['.repeat(60)}${']'.repeat(60)}}`,
  'another format': put((one) => one.replace('dosewright-site', 'dosewright-sight')),
  'a newer version': put((one) => one.replace(/"version":\s*2/, '"version": 99')),
  'no version': put((one) => one.replace(/"version":\s*2/, '"version": "two"')),
  'a value out of place': put((one) => one.replace(/"pumpId":\s*"[^"]*"/, '"pumpId": 7')),
  'a part missing': put((one) => one.replace('"startedAt"', '"startedOn"')),
  'an id twice': textOf(theirs).replaceAll(
    theirs.site.visits[3]?.id ?? '-',
    theirs.site.visits[2]?.id ?? '-',
  ),
  'a day that is none': put((one) => one.replace(/"startedAt":\s*"2020-01-05/, '"startedAt": "2020-02-31')),
  'too large': `${text}${' '.repeat(32_000_000)}`,
}

const written = (settled: Outcome<Settled>): unknown => {
  if (!settled.ok) return settled
  const { document, ...rest } = settled.value
  return {
    ...rest,
    text: 'bytes' in document ? new TextDecoder().decode(document.bytes) : textOf(document),
  }
}

describe('a file read on the thread', () => {
  it.each(Object.entries(DAMAGES))(
    'that is damaged (%s) is refused in the same words as here',
    async (_what, damaged) => {
      const here = readHere(damaged)
      const there = await reader.read(damaged)
      if (here.ok || there.ok) throw new Error('a damaged file was taken')
      expect(there.problem).toEqual(here.problem)
      expect(sentence(there.problem)).toBe(sentence(here.problem))
    },
  )

  it('that is whole is known by the same name and library', async () => {
    const there = good(await reader.read(text))
    const here = good(readHere(text))
    expect([there.id, there.name, there.products, there.instruments]).toEqual([
      here.id,
      here.name,
      here.products,
      here.instruments,
    ])
  })

  const mine: SiteFile = {
    ...theirs,
    site: { ...theirs.site, notes: 'here', visits: theirs.site.visits.slice(0, 70) },
  }
  const freshId = '0b0e9c54-8f0a-4a55-9a3b-2f3f5d0c7e11'
  const WAYS: readonly Settling[] = [
    { freshId },
    { freshId, choice: 'keep-mine' },
    { freshId, choice: 'take-theirs' },
    { freshId, choice: 'keep-both' },
    { freshId, choice: 'merge' },
    { freshId, choice: 'merge', prefer: 'mine' },
    { freshId, choice: 'merge', prefer: 'theirs' },
  ]
  it.each([
    ['another version of it is here', mine],
    ['it is here already', theirs],
    ['it is not here', null],
  ])('comes to the same, to the last sign, when %s', async (_what, here) => {
    if (here !== null) writeFileSync(join(root, 'sites', `${here.site.id}.json`), textOf(here))
    const onThread = good(await reader.read(text))
    const inPlace = good(readHere(text))
    const site = here?.site ?? null
    expect(await onThread.compare(site)).toEqual(await inPlace.compare(site))
    for (const how of WAYS)
      expect(written(await onThread.settle(site, how))).toEqual(written(await inPlace.settle(site, how)))
  })

  it('whose thread cannot start is read all the same', async () => {
    const lame = new ReaderOnThread(root, join(root, 'nowhere.js'))
    const read = good(await lame.read(text))
    expect(good(await read.compare(null))).toEqual(good(await good(readHere(text)).compare(null)))
    lame.close()
  })

  it('that is given up between two steps is told so, and the next file is read', async () => {
    const read = good(await reader.read(text))
    await reader.stop()
    expect(await read.settle(null, { freshId })).toEqual({ ok: false, problem: { code: 'stopped' } })
    expect((await reader.read(text)).ok).toBe(true)
  })

  it('does not take other calls with it when it is given up', async () => {
    const body = Buffer.from(JSON.stringify({ text }))
    const save = reader.parse(body, 'site.edit')
    const file = reader.read(text)
    await reader.stop()
    expect(await file).toEqual({ ok: false, problem: { code: 'stopped' } })
    expect(await save).toEqual(parseBody(body))
  })
})
