import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { Call } from '#core/contract/contract'
import { good, removeFolder, tempFolder } from '../../contract/program'
import { needBuild, startBuilt, type Started } from '../launch/built-program'
import { connect } from '../torture/client'
import { tenThousandVisits, textOf } from './large-file'

beforeAll(needBuild, 180_000)

let folder: string
let host: Started
let call: Call
beforeEach(async () => {
  folder = tempFolder()
  host = await startBuilt(folder)
  call = await connect(host)
})
afterEach(async () => {
  host.child.kill('SIGTERM')
  await host.ended
  removeFolder(folder)
})

const file = tenThousandVisits()
const text = textOf(file)
const files = (): readonly string[] => readdirSync(join(folder, 'sites'))

/** Asks small questions one after the other until the work is done; how long each answer took, ms. */
async function askedMeanwhile<T>(work: Promise<T>): Promise<{ readonly value: T; readonly waits: number[] }> {
  const waits: number[] = []
  const state = { going: true }
  void work.finally(() => (state.going = false))
  while (state.going) {
    const began = performance.now()
    await good(call('sites.removed', {}))
    waits.push(performance.now() - began)
  }
  return { value: await work, waits }
}

describe('while a file of ten thousand visits comes in', () => {
  it('other calls are answered: none waits for more than a part of it', { timeout: 120_000 }, async () => {
    const began = performance.now()
    const { value, waits } = await askedMeanwhile(call('site.import', { text }))
    const whole = performance.now() - began
    expect(value).toMatchObject({ ok: true, value: { id: file.site.id, products: 3 } })
    console.log(
      `import of ${(text.length / 1e6).toFixed(1)} MB: ${whole.toFixed(0)} ms; ${waits.length} other calls meanwhile, ` +
        `the slowest answered after ${Math.max(...waits).toFixed(0)} ms`,
    )
    // read in one go, as it was before, all but the first and last of them would wait for nearly the whole of it
    expect(waits.length).toBeGreaterThan(10)
    expect(Math.max(...waits)).toBeLessThan(whole / 3)
    const { site } = await good(call('site.open', { id: file.site.id }))
    expect(site).toEqual(JSON.parse(JSON.stringify(file.site)))
  })

  it(
    'it can be given up: nothing of it is written, and it can come in afterwards',
    { timeout: 120_000 },
    async () => {
      const importing = call('site.import', { text })
      // before the host has the file in hand there is nothing to give up
      const state = { going: true }
      void importing.finally(() => (state.going = false))
      while (state.going) await good(call('site.stopReading', {}))
      expect(await importing).toEqual({ ok: false, problem: { code: 'stopped' } })
      expect(files()).toEqual([])
      expect(await good(call('sites.list', {}))).toEqual({ sites: [], waiting: 0 })
      expect((await good(call('library.open', {}))).products).toEqual([])
      expect(await call('site.import', { text })).toMatchObject({ ok: true, value: { id: file.site.id } })
    },
  )
})
