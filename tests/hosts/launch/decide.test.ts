import { mkdirSync, utimesSync, writeFileSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { findBrowser, windowArguments } from '#main/launch/app-window'
import { isBuilt } from '#main/launch/built'
import { decide, type Surroundings } from '#main/launch/desktop'
import { parseHostOptions } from '#main/options'
import { defaultDataFolder } from '#main/storage/data-folder'
import { removeFolder, tempFolder } from '../../contract/program'

const here: Surroundings = {
  platform: 'linux',
  nodeVersion: 'v22.12.0',
  runtime: '/electron',
  display: true,
  isRoot: false,
}

describe('which window opens, and why', () => {
  it.each<[string, Partial<Surroundings>, boolean, object]>([
    ['everything there: the desktop window', {}, false, { kind: 'desktop', runtime: '/electron' }],
    ['asked for: the local window', {}, true, { kind: 'local', why: 'as asked with --local' }],
    ['no display: the local window', { display: false }, false, { kind: 'local' }],
    ['root: the local window', { isRoot: true }, false, { kind: 'local' }],
    ['no runtime, new Node: fetch it', { runtime: null }, false, { kind: 'fetch' }],
    ['no runtime, newer Node: fetch it', { runtime: null, nodeVersion: 'v24.0.0' }, false, { kind: 'fetch' }],
    [
      'no runtime, old Node: the local window',
      { runtime: null, nodeVersion: 'v20.20.2' },
      false,
      { kind: 'local' },
    ],
    [
      'no runtime, Node a little too old: the local window',
      { runtime: null, nodeVersion: 'v22.11.9' },
      false,
      { kind: 'local' },
    ],
  ])('%s', (_what, changes, asked, decision) => {
    expect(decide({ ...here, ...changes }, asked)).toMatchObject(decision)
  })

  it('the reason for the local window names what is missing', () => {
    const decision = decide({ ...here, runtime: null, nodeVersion: 'v20.20.2' }, false)
    expect(decision).toMatchObject({ why: expect.stringMatching(/Electron runtime.*22\.12.*v20\.20\.2/) })
  })
})

const installed = (...paths: readonly string[]) => {
  const there = new Set(paths)
  return (path: string): boolean => there.has(path)
}

describe('the browser for the local window', () => {
  it('is found by name on the path, in the order of our list', () => {
    const env = { PATH: '/opt/x:/usr/bin' }
    expect(findBrowser('linux', env, installed('/usr/bin/google-chrome', '/opt/x/brave-browser'))).toBe(
      '/usr/bin/google-chrome',
    )
    expect(findBrowser('linux', env, installed())).toBeNull()
    expect(findBrowser('linux', {}, installed('/usr/bin/chromium'))).toBeNull()
  })

  it('shows one page in a profile of its own, without extensions', () => {
    const args = windowArguments('http://127.0.0.1:1/#start=x', '/tmp/profile')
    expect(args).toEqual(
      expect.arrayContaining([
        '--app=http://127.0.0.1:1/#start=x',
        '--user-data-dir=/tmp/profile',
        '--disable-extensions',
      ]),
    )
    expect(args.join(' ')).not.toMatch(/no-sandbox|disable-web-security|remote-debugging/)
  })
})

describe('the command line of a host', () => {
  it('takes a data folder and a shared folder, made whole', () => {
    expect(parseHostOptions(['--data', '/a/../b', '--shared=/c', '--json'])).toEqual({
      dataFolder: '/b',
      sharedFolder: '/c',
      json: true,
      withParent: false,
    })
  })

  it.each([['--port=80'], ['--host=0.0.0.0'], ['file.json'], ['--data']])(
    '%s: a sentence instead',
    (argument) => {
      expect(parseHostOptions([argument])).toEqual(expect.stringMatching(/Options: --data FOLDER/))
    },
  )
})

describe('where data lives', () => {
  it.each([
    ['linux', {}, '/home/a/.local/share/dosewright'],
    ['linux', { XDG_DATA_HOME: '/data' }, '/data/dosewright'],
    ['darwin', {}, '/home/a/Library/Application Support/Dosewright/Data'],
  ] as const)('on %s with %j: %s', (platform, env, folder) => {
    expect(defaultDataFolder(platform, '/home/a', env)).toBe(folder)
  })
})

describe('a build', () => {
  let root = ''
  const put = (path: string, seconds: number): void => {
    mkdirSync(dirname(join(root, path)), { recursive: true })
    writeFileSync(join(root, path), '')
    utimesSync(join(root, path), seconds, seconds)
  }
  const age = (path: string, seconds: number): void => utimesSync(join(root, path), seconds, seconds)
  beforeEach(() => {
    root = tempFolder()
    put('src-core/a/b.ts', 100)
    for (const folder of ['src-core/a', 'src-core']) age(folder, 100)
    for (const result of ['electron', 'local-host', 'worksheet', 'demo']) put(`out/main/${result}.js`, 200)
    put('out/preload/preload.cjs', 200)
    put('out/renderer/index.html', 200)
  })
  afterEach(() => removeFolder(root))

  it('stands while nothing has changed since', () => {
    expect(isBuilt(root)).toBe(true)
  })
  it.each<[string, () => void]>([
    ['a source was written', () => age('src-core/a/b.ts', 300)],
    ['a source was added', () => put('src-renderer/new.svelte', 300)],
    ['a source was taken away', () => rmSync(join(root, 'src-core/a/b.ts'))],
    ['a package was changed', () => put('package-lock.json', 300)],
    ['one of its results is missing', () => rmSync(join(root, 'out/preload/preload.cjs'))],
    ['one of its results is older than a source', () => age('out/renderer/index.html', 50)],
  ])('is made again when %s', (_what, change) => {
    change()
    expect(isBuilt(root)).toBe(false)
  })
})
