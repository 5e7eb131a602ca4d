import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { codeOf, places, root, sources } from './sources'

const code = [
  ...sources('src-core', ['.ts']),
  ...sources('src-main', ['.ts']),
  ...sources('src-renderer', ['.ts', '.svelte']),
]

describe('rules of the house', () => {
  it('nothing but what belongs stands at the top of the tree', () => {
    const allowed = new Set([
      'README.md',
      'DEVELOPERS.md',
      'LICENSE',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
      'electron.vite.config.ts',
      'src-main',
      'src-renderer',
      'src-core',
      'tests',
      'assets',
      'node_modules',
      'out',
      'dist',
      'test-results',
      'screenshots',
      'playwright-report',
    ])
    expect(readdirSync(root).filter((name) => !name.startsWith('.') && !allowed.has(name))).toEqual([])
  })

  it('the core has no clock and no chance', () => {
    expect(
      places(sources('src-core', ['.ts']), /\bDate\.now\b|\bnew Date\b|\bMath\.random\b|\bperformance\b/u),
    ).toEqual([])
  })

  it('no escape from the types', () => {
    expect(places(code, /@ts-ignore|@ts-nocheck|@ts-expect-error/u)).toEqual([])
    expect(places(codeOf(code), /: any\b|as any\b|<any\b/u)).toEqual([])
  })

  it('lint is silenced for one line at a time, with the reason beside it', () => {
    expect(places(code, /(?:es|ox)lint-disable(?!-next-line \S+ -- )/u)).toEqual([])
  })

  it('nothing is left for later in the sources', () => {
    expect(places(code, /\bTODO\b|\bFIXME\b|\bXXX\b|not implemented/iu)).toEqual([])
  })

  it('no test is switched off or alone', () => {
    const tests = sources('tests', ['.test.ts', '.spec.ts', '.test-d.ts'])
    expect(tests.length).toBeGreaterThan(20)
    expect(places(tests, /\b(?:it|test|describe)\.(?:only|skip|todo)\b/u)).toEqual([])
  })

  it('the program opens no connection outward', () => {
    // the page of the watch build asks its own host whether it is still the newest
    const host = sources('src-main', ['.ts']).filter(({ path }) => path !== 'src-main/launch/live-reload.ts')
    expect(places(host, /\bfetch\(|\bhttps?\.(?:request|get)\(|\bnet\.connect\(|\btls\./u)).toEqual([])
  })

  it('ipcMain has one importer', () => {
    const importers = sources('src-main', ['.ts']).filter(({ text }) => /\bipcMain\b/u.test(text))
    expect(importers.map(({ path }) => path)).toEqual(['src-main/electron/ipc.ts'])
  })
})
