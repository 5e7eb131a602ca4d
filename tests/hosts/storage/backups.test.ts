import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { addDays } from '#core/units/days'
import { Backups, DAYS_KEPT, toThin } from '#main/storage/backups'
import { site } from '../../contract/sample-site'
import { good, removeFolder, tempFolder } from '../../contract/program'
import { openStore, siteFile } from './files'

let root = ''
beforeEach(() => {
  root = tempFolder()
})
afterEach(() => removeFolder(root))

describe('daily copies', () => {
  it('hold the document as it was before the first write of the day', async () => {
    const made = site()
    const name = { kind: 'site', id: made.id } as const
    let today = '2025-03-01T09:00:00.000Z'
    const store = openStore(root, { now: () => today })
    let { revision } = await good(store.create(name, siteFile(made)))
    for (const [at, notes] of [
      ['2025-03-02T09:00:00.000Z', 'b'],
      ['2025-03-02T10:00:00.000Z', 'c'],
      ['2025-03-03T09:00:00.000Z', 'd'],
    ] as const) {
      today = at
      revision = (await good(store.write(name, siteFile({ ...made, notes }), revision))).revision
    }
    const copies = await good(store.listBackups(name))
    expect(copies.map(({ copy }) => copy)).toEqual(['2025-03-03', '2025-03-02'])
    expect((await good(store.readBackup(name, '2025-03-02'))).site.notes).toBe('')
    expect((await good(store.readBackup(name, '2025-03-03'))).site.notes).toBe('c')
  })

  it('are neither added nor replaced when the clock is set back', async () => {
    const file = join(root, 'document.json')
    const backups = new Backups(root, 'key', file)
    for (const [content, day] of [
      ['first', '2025-03-10'],
      ['second', '2025-03-09'],
      ['third', '2025-03-10'],
    ] as const) {
      writeFileSync(file, content)
      backups.daily(`${day}T09:00:00.000Z`)
    }
    expect(backups.list().map(({ copy }) => copy)).toEqual(['2025-03-10', '2025-03-09'])
  })

  it('of two years: the last fourteen days are all there, and one of each month before', () => {
    let kept: readonly string[] = []
    for (let number = 0; number < 730; number += 1) {
      const all = [...kept, addDays('2024-01-01', number)]
      const going = new Set(toThin(all))
      kept = all.filter((day) => !going.has(day))
    }
    expect(kept.slice(-DAYS_KEPT)).toEqual(
      Array.from({ length: DAYS_KEPT }, (_, index) => addDays('2024-01-01', 730 - DAYS_KEPT + index)),
    )
    // 24 firsts of a month, less the one among the last fourteen days if there is one
    expect(kept.slice(0, -DAYS_KEPT).map((day) => day.slice(8))).toEqual(
      Array.from({ length: 24 }, () => '01'),
    )
  })

  it('are found only by the names they were listed under', async () => {
    const made = site()
    const name = { kind: 'site', id: made.id } as const
    const store = openStore(root)
    await good(store.create(name, siteFile(made)))
    writeFileSync(join(root, 'secret.json'), '{}')
    for (const copy of ['../../secret', '2025-03-09/../../../secret', '', '2025-03-09\u0000', '2025-03-08'])
      expect(await store.readBackup(name, copy)).toEqual({
        ok: false,
        problem: { code: 'not-found', what: 'the copy' },
      })
  })
})
