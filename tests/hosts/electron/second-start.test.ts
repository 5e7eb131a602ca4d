import { join } from 'node:path'
import { afterAll, expect, it, vi } from 'vitest'
import { removeFolder, startProgram, tempFolder } from '../../contract/program'
import * as fake from './fake-electron'

vi.mock('electron', () => import('./fake-electron'))
vi.mock('electron-store', () => ({ default: Map }))

const folder = tempFolder()
const argv = process.argv
afterAll(() => {
  process.argv = argv
  removeFolder(folder)
})

it('a second desktop program on the same data says who has it and ends with code 3, without a window', async () => {
  const data = join(folder, 'data')
  const { program } = startProgram(data)
  process.argv = ['electron', '.', `--data=${data}`]
  await import('#main/electron/main')
  await vi.waitFor(() => expect(fake.app.exitCode).toBe(3), 30_000)
  expect(fake.errorBoxes[0]).toMatch(/^The data folder is in use .* \(process \d+, since .* UTC\)\./)
  expect(fake.FakeWindow.made).toEqual([])
  expect(fake.handlers.size).toBe(0)
  program.close()
})
