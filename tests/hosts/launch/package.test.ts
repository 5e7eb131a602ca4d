import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
// these come with electron-builder
import { FuseV1Options } from '@electron/fuses'
import { Ajv } from 'ajv'
import { describe, expect, it } from 'vitest'
import { builtIn, shippedPackages } from '#main/launch/licences'
import { ROOT } from '#main/launch/built'
import { needBuild } from './built-program'

const file = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
  readonly main: string
  readonly dependencies: Readonly<Record<string, string>>
  readonly devDependencies: Readonly<Record<string, string>>
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

  it('names every package whose code was built in, with its licence and the text of it, and no other', () => {
    needBuild()
    const texts = ['main', 'preload', 'renderer'].map((target) =>
      readFileSync(join(ROOT, 'out', 'licences', `${target}.txt`), 'utf8'),
    )
    const titles = texts.flatMap((text) => [...text.matchAll(/^## (\S+) (\S+): (.+)$/gm)])
    const bundled = titles.map(([, name = '', version = '', licence = '']) => ({ name, version, licence }))
    expect(bundled.length).toBeGreaterThan(20)
    const shipped = [...builtIn(), ...shippedPackages()].map((one) => JSON.stringify(one))
    expect(bundled.filter((one) => !shipped.includes(JSON.stringify(one)))).toEqual([])
    const named = new Set(bundled.map(({ name }) => name))
    expect(builtIn().filter(({ name }) => !named.has(name))).toEqual([])
    // words of each kind of licence
    for (const words of ['Permission is hereby granted', 'Apache License', 'SIL OPEN FONT LICENSE'])
      expect(texts.join('\n')).toContain(words)
  })

  it('has settings that electron-builder takes, for each of the three systems', () => {
    // the schema electron-builder checks itself against before it does anything
    const schema = JSON.parse(
      readFileSync(join(ROOT, 'node_modules', 'app-builder-lib', 'scheme.json'), 'utf8'),
    ) as object
    const problems = (settings: object): readonly string[] => {
      const validate = new Ajv({ strict: false, allErrors: true }).compile(schema)
      validate(settings)
      return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message ?? ''}`)
    }
    expect(problems(file.build)).toEqual([])
    for (const wrong of [
      { asarr: true },
      { nsis: { oneClik: false } },
      { mac: { target: 7 } },
      { electronFuses: { runAsNod: false } },
    ])
      expect(problems({ ...file.build, ...wrong })).not.toEqual([])
  })

  it('is built around a runtime that its makers support: a new major is a step of the release, not a surprise', () => {
    const { devDependencies } = file
    // the fuse wire of this major is known to the tests above; another one has to be looked at first
    expect(devDependencies['electron']).toBe('45.4')
    const known = Object.values(FuseV1Options).filter((one) => typeof one === 'string')
    expect(known).toHaveLength(Object.keys(file.build.electronFuses).length)
  })

  it('holds nothing under a licence that asks more than to be named', () => {
    const allowed =
      /^(?:MIT|ISC|0BSD|BSD-[23]-Clause|Apache-2\.0|Apache-2\.0 AND BSL-1\.0|OFL-1\.1|\(MIT OR CC0-1\.0\))$/
    const shipped = [...builtIn(), ...shippedPackages()]
    expect(shipped.length).toBeGreaterThan(Object.keys(file.dependencies).length)
    expect(shipped.filter(({ licence }) => !allowed.test(licence))).toEqual([])
  })
})
