import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { builtIn, shippedPackages } from '#main/launch/licences'
import { ROOT } from '#main/launch/built'

const file = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
  readonly main: string
  readonly dependencies: Readonly<Record<string, string>>
  readonly build: {
    readonly asar: boolean
    readonly icon: string
    readonly files: readonly string[]
    readonly electronFuses: Readonly<Record<string, boolean>>
    readonly linux: { readonly target: readonly string[] }
    readonly win: { readonly target: readonly string[] }
    readonly mac: { readonly target: readonly string[]; readonly hardenedRuntime: boolean }
  }
}

describe('the package that is shipped', () => {
  // names and meaning: electron/fuses, src/config.ts
  it.each([
    ['runAsNode', false],
    ['enableCookieEncryption', true],
    ['enableNodeOptionsEnvironmentVariable', false],
    ['enableNodeCliInspectArguments', false],
    ['enableEmbeddedAsarIntegrityValidation', true],
    ['onlyLoadAppFromAsar', true],
    ['loadBrowserProcessSpecificV8Snapshot', false],
    ['grantFileProtocolExtraPrivileges', false],
  ])('has the fuse %s set to %s', (fuse, value) => {
    expect(file.build.electronFuses[fuse]).toBe(value)
  })

  it('sets no fuse that is not in the list above', () => {
    expect(Object.keys(file.build.electronFuses)).toHaveLength(8)
  })

  it('is one archive with the built program, the demo sites and the licence, and no sources', () => {
    expect(file.build.asar).toBe(true)
    expect(file.build.files).toEqual(expect.arrayContaining(['out/**', 'assets/demo/**', 'LICENSE']))
    expect(file.build.files.filter((glob) => /^(?:src-|tests)/.test(glob))).toEqual([])
    expect(file.main).toBe('out/main/electron.js')
    expect(existsSync(join(ROOT, file.build.icon))).toBe(true)
  })

  it('comes for the three systems', () => {
    expect(file.build.linux.target).toEqual(['deb', 'AppImage'])
    expect(file.build.win.target).toEqual(['nsis'])
    expect(file.build.mac).toMatchObject({ target: ['dmg'], hardenedRuntime: true })
  })

  it('holds nothing under a licence that asks more than to be named', () => {
    const allowed =
      /^(?:MIT|ISC|0BSD|BSD-[23]-Clause|Apache-2\.0|Apache-2\.0 AND BSL-1\.0|OFL-1\.1|\(MIT OR CC0-1\.0\))$/
    const shipped = [...builtIn(), ...shippedPackages()]
    expect(shipped.length).toBeGreaterThan(Object.keys(file.dependencies).length)
    expect(shipped.filter(({ licence }) => !allowed.test(licence))).toEqual([])
  })
})
