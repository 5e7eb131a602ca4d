import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { prepareDataFolder } from '#main/storage/data-folder'
import { deskOnThread } from '#main/summary/thread'
import { removeFolder, tempFolder } from '../../contract/program'

let root: string
beforeEach(() => {
  root = tempFolder()
  prepareDataFolder(root)
})
afterEach(() => removeFolder(root))

const thread = (text: string): string => {
  const path = join(root, 'thread.mjs')
  writeFileSync(path, text)
  return path
}
const EMPTY = { sites: '[]', waiting: [] }

describe('the thread that keeps the index', () => {
  it('answers each question with its own answer, also out of order', async () => {
    const file = thread(`
      import { parentPort } from 'node:worker_threads'
      const held = []
      parentPort.on('message', ({ number, method }) => {
        held.push({ number, value: method })
        if (held.length === 2) for (const reply of held.reverse()) parentPort.postMessage(reply)
      })`)
    const desk = deskOnThread({ root }, file, 'one')
    expect(await Promise.all([desk.list(), desk.stop()])).toEqual(['list', 'stop'])
    desk.close()
  })

  it.each([
    ['cannot be started', (): string => join(root, 'nowhere.js')],
    [
      'dies of the first question',
      () =>
        thread(`
      import { parentPort } from 'node:worker_threads'
      parentPort.on('message', () => { throw new Error('on purpose') })`),
    ],
    ['ends by itself', () => thread('process.exit(0)')],
  ])('that %s is replaced, and what was asked is answered all the same', async (_what, file) => {
    const desk = deskOnThread({ root }, file(), 'one')
    expect(await desk.list()).toEqual(EMPTY)
    expect(await desk.list()).toEqual(EMPTY)
    desk.close()
  })
})
