import { execFileSync } from 'node:child_process'
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
// both come with electron-builder
import { listPackage } from '@electron/asar'
import { FuseV1Options, getCurrentFuseWire } from '@electron/fuses'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROOT } from '#main/launch/built'
import { removeFolder, tempFolder } from '../../contract/program'
import { needBuild } from './built-program'

const folder = tempFolder()
const runtime = join(folder, 'runtime')
const unpacked = join(folder, 'dist', 'linux-unpacked')

/**
 * Stands in for the Electron runtime, which is not fetched for a test: a file with the runtime's fuse wire, as
 * electron/fuses src/config.ts and docs/tutorial/fuses.md describe it: sentinel, version 1, count, one sign per fuse.
 * Every fuse is set to the opposite of what the package asks for, so that a fuse that is not written shows.
 */
const STANDS = '101100111'
function standIn(): void {
  mkdirSync(join(runtime, 'resources'), { recursive: true })
  const sentinel = Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX')
  const wire = Buffer.concat([sentinel, Buffer.from([1, STANDS.length]), Buffer.from(STANDS)])
  writeFileSync(join(runtime, 'electron'), Buffer.concat([Buffer.alloc(64), wire, Buffer.alloc(64)]))
  chmodSync(join(runtime, 'electron'), 0o755)
  for (const name of ['LICENSE', 'LICENSES.chromium.html', 'version'])
    writeFileSync(join(runtime, name), 'stands in')
}

beforeAll(() => {
  needBuild()
  standIn()
  const cli = join(ROOT, 'node_modules', 'electron-builder', 'cli.js')
  const args = ['--linux', 'dir', '--x64', '--publish', 'never', `-c.electronDist=${runtime}`]
  execFileSync(process.execPath, [cli, ...args, `-c.directories.output=${join(folder, 'dist')}`], {
    cwd: ROOT,
    encoding: 'utf8',
    stdio: 'pipe',
  })
}, 300_000)
afterAll(() => removeFolder(folder))

const files = (): readonly string[] =>
  listPackage(join(unpacked, 'resources', 'app.asar'), { isPack: false }).map((name) =>
    name.replaceAll('\\', '/'),
  )

describe('the package, put together by electron-builder around a stand-in for the runtime', () => {
  it('holds the built program, the demo sites and the licence', () => {
    expect(files()).toEqual(
      expect.arrayContaining([
        '/out/main/electron.js',
        '/out/preload/preload.cjs',
        '/out/renderer/index.html',
        '/assets/demo/lantern-lane-cafe.json',
        '/LICENSE',
        '/out/licences/main.txt',
        '/out/licences/renderer.txt',
        '/package.json',
      ]),
    )
  })

  it('holds no source, no test, no source map of ours and no tool that only builds or tests', () => {
    const ours = files().filter((name) => !name.startsWith('/node_modules/'))
    expect(ours.filter((name) => /^\/(?:src-|tests|\.)|\.(?:map|ts|svelte)$/u.test(name))).toEqual([])
    const packages = new Set(
      files().flatMap((name) => /^\/node_modules\/((?:@[^/]+\/)?[^/]+)/u.exec(name)?.[1] ?? []),
    )
    const { devDependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      readonly devDependencies: Readonly<Record<string, string>>
    }
    expect(Object.keys(devDependencies).filter((name) => packages.has(name))).toEqual([])
  })

  it('holds the licence of every package that lies in it as a folder of its own', () => {
    const all = files()
    const packages = new Set(
      all.flatMap((name) => /^(\/node_modules\/(?:@[^/]+\/)?[^/]+)\//u.exec(name)?.[1] ?? []),
    )
    expect(packages.size).toBeGreaterThan(5)
    const bare = [...packages].filter(
      (folder) =>
        !all.some((name) => name.startsWith(`${folder}/`) && /\/(?:licen[cs]e|copying)[^/]*$/iu.test(name)),
    )
    expect(bare).toEqual([])
  })

  it('holds every package the built main program still imports', () => {
    const out = join(ROOT, 'out', 'main')
    const built = files()
      .filter((name) => /^\/out\/main\/(?:electron\.js|parts\/.*\.js)$/u.test(name))
      .map((name) => readFileSync(join(out, name.slice('/out/main/'.length)), 'utf8'))
      .join('\n')
    const imported = [...built.matchAll(/(?:from|import)\s*["']((?:@[\w.-]+\/)?[\w.-]+)[^"']*["']/gu)]
      .map(([, name = '']) => name)
      .filter((name) => !name.startsWith('.') && !name.startsWith('node:') && name !== 'electron')
    expect(imported).toContain('electron-store')
    const missing = imported.filter(
      (name) => name !== 'node' && !files().includes(`/node_modules/${name}/package.json`),
    )
    expect([...new Set(missing)]).toEqual([])
  })

  // names and order: electron/fuses, src/config.ts; '0' is off, '1' is on
  it.each([
    ['RunAsNode', '0'],
    ['EnableCookieEncryption', '1'],
    ['EnableNodeOptionsEnvironmentVariable', '0'],
    ['EnableNodeCliInspectArguments', '0'],
    ['EnableEmbeddedAsarIntegrityValidation', '1'],
    ['OnlyLoadAppFromAsar', '1'],
    ['LoadBrowserProcessSpecificV8Snapshot', '0'],
    ['GrantFileProtocolExtraPrivileges', '0'],
  ] as const)('has the fuse %s written as %s', async (name, state) => {
    const fuses = await getCurrentFuseWire(join(unpacked, 'dosewright'))
    expect(String.fromCharCode(Number(fuses[FuseV1Options[name]]))).toBe(state)
    expect(STANDS[FuseV1Options[name]]).not.toBe(state)
  })
})
