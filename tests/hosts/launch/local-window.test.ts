import { spawn, type ChildProcess } from 'node:child_process'
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { removeFolder, tempFolder } from '../../contract/program'
import { needBuild } from './built-program'

beforeAll(needBuild, 180_000)

let folder = ''
let child: ChildProcess | null = null
beforeEach(() => {
  folder = tempFolder()
})
afterEach(() => {
  child?.kill('SIGKILL')
  removeFolder(folder)
})

/** A browser that writes down how it was called and shows a "window" until the file `close` appears. */
function standInBrowser(): string {
  const bin = join(folder, 'bin')
  mkdirSync(bin)
  const script = `#!/bin/sh\nprintf '%s\\n' "$@" > "${folder}/called"\nwhile [ ! -e "${folder}/close" ]; do sleep 0.05; done\n`
  writeFileSync(join(bin, 'chromium'), script)
  chmodSync(join(bin, 'chromium'), 0o755)
  return bin
}

function openWindow(path: string): { readonly said: () => string; readonly ended: Promise<number | null> } {
  const script = fileURLToPath(new URL('./window-child.ts', import.meta.url))
  const started = spawn(process.execPath, ['--import', 'tsx', script, join(folder, 'data')], {
    env: { ...process.env, PATH: path },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  child = started
  let said = ''
  started.stdout.on('data', (data: Buffer) => (said += data.toString()))
  return { said: () => said, ended: new Promise((resolve) => started.once('exit', resolve)) }
}

describe.runIf(process.platform !== 'win32')('the local window', () => {
  it('is one page in a profile of its own; closing it stops the program and leaves nothing behind', async () => {
    const { said, ended } = openWindow(`${standInBrowser()}:/usr/bin:/bin`)
    await expect.poll(() => existsSync(join(folder, 'called')), { timeout: 20_000 }).toBe(true)
    await expect.poll(() => readFileSync(join(folder, 'called'), 'utf8')).toContain('--window-size')
    const called = readFileSync(join(folder, 'called'), 'utf8').split('\n')
    expect(called[0]).toMatch(/^--app=http:\/\/127\.0\.0\.1:\d+\/#start=[\w-]{43}$/)
    const profile = called.find((one) => one.startsWith('--user-data-dir='))?.split('=')[1] ?? ''
    expect(existsSync(profile)).toBe(true)
    expect(existsSync(join(folder, 'data', 'lock.json'))).toBe(true)
    writeFileSync(join(folder, 'close'), '')
    expect(await ended).toBe(0)
    expect(existsSync(join(folder, 'data', 'lock.json'))).toBe(false)
    expect(existsSync(profile)).toBe(false)
    // the address is in the window, so it is not also printed for everybody to read
    expect(said()).not.toContain('#start=')
  })

  it('without a browser is an address to open by hand', async () => {
    const { said, ended } = openWindow('/nowhere')
    await expect
      .poll(said, { timeout: 20_000 })
      .toMatch(/Open within a minute: http:\/\/127\.0\.0\.1:\d+\/#start=/)
    child?.kill('SIGTERM')
    expect(await ended).toBe(0)
  })
})
