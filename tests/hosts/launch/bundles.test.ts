import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, normalize } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { METHODS } from '#core/contract/methods'
import { needBuild, OUT } from './built-program'

beforeAll(needBuild, 120_000)

const IMPORT = /(?:\bfrom\s*|\bimport\s*\(?\s*|\brequire\s*\(\s*)["'`]([\w@.][\w@./:-]*)["'`]/g

/** Every module a built file asks for, itself or through the parts it is made of. */
function imports(entry: string, seen = new Set<string>()): ReadonlySet<string> {
  const found = new Set<string>()
  seen.add(entry)
  for (const [, name = ''] of readFileSync(entry, 'utf8').matchAll(IMPORT)) {
    const path = normalize(join(dirname(entry), name))
    if (!name.startsWith('.')) found.add(name)
    // examples in the comments of packages name files that were never there
    else if (!seen.has(path) && existsSync(path)) for (const below of imports(path, seen)) found.add(below)
  }
  return found
}

const page = (): readonly { readonly name: string; readonly text: string }[] =>
  readdirSync(join(OUT, 'renderer'), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(?:js|css|html)$/.test(name))
    .map((name) => ({ name, text: readFileSync(join(OUT, 'renderer', name), 'utf8') }))

describe('what was built', () => {
  it.each(['local-host', 'worksheet', 'demo'])('%s needs no Electron', (name) => {
    const needed = [...imports(join(OUT, 'main', `${name}.js`))]
    expect(needed).toEqual(expect.arrayContaining(['node:fs']))
    expect(needed.filter((module) => module.startsWith('electron'))).toEqual([])
  })

  it('the desktop program needs Electron, electron-store, and no server', () => {
    const needed = [...imports(join(OUT, 'main', 'electron.js'))]
    expect(needed).toEqual(expect.arrayContaining(['electron', 'electron-store']))
    expect(needed.filter((module) => /^(?:node:)?(?:http|https|net|tls|dgram)$/.test(module))).toEqual([])
  })

  it.each(['local-host', 'worksheet'])('%s starts from its own few files, with no package beside', (name) => {
    const alone = mkdtempSync(join(tmpdir(), 'dosewright-alone-'))
    try {
      cpSync(join(OUT, 'main'), join(alone, 'out', 'main'), { recursive: true })
      cpSync('package.json', join(alone, 'package.json'))
      const { stderr, status } = spawnSync(process.execPath, [`out/main/${name}.js`, '--nonsense'], {
        cwd: alone,
        encoding: 'utf8',
      })
      expect(stderr).not.toContain('ERR_MODULE_NOT_FOUND')
      expect(stderr).toMatch(/--nonsense|not how this command is called/u)
      expect(status).toBe(2)
    } finally {
      rmSync(alone, { recursive: true })
    }
  })

  it('the preload script is one file that needs electron alone and stays small', () => {
    const file = join(OUT, 'preload', 'preload.cjs')
    expect([...imports(file)]).toEqual(['electron'])
    expect(readdirSync(dirname(file))).toEqual(['preload.cjs'])
    expect(statSync(file).size).toBeLessThan(4_000)
    for (const method of METHODS) expect(readFileSync(file, 'utf8')).toContain(method)
  })

  it('the page asks for nothing of Node or Electron', () => {
    const files = page().filter(({ name }) => name.endsWith('.js'))
    expect(files.length).toBeGreaterThan(3)
    for (const { name } of files) {
      const needed = [...imports(join(OUT, 'renderer', name))]
      expect([
        name,
        needed.filter((module) => /^node:|^electron|^(?:fs|path|os|child_process)$/.test(module)),
      ]).toEqual([name, []])
    }
    expect(files.filter(({ text }) => /["'`]node:/.test(text)).map(({ name }) => name)).toEqual([])
  })

  it('the page fetches nothing from elsewhere and ships no source map', () => {
    expect(
      readdirSync(join(OUT, 'renderer'), { recursive: true, encoding: 'utf8' }).filter((name) =>
        name.endsWith('.map'),
      ),
    ).toEqual([])
    for (const { name, text } of page()) {
      const loading = /(?:src|href|url\(|import\(|fetch\(|@import)\s*[=(]?\s*["'`]?https?:/g
      expect([name, text.match(loading) ?? []]).toEqual([name, []])
      expect([name, /sourceMappingURL/.test(text)]).toEqual([name, false])
    }
  })

  it('the page has no inline script, style or handler in its markup', () => {
    const html = page().find(({ name }) => name === 'index.html')?.text ?? ''
    expect(html).toContain('<div id="app">')
    expect(html).not.toMatch(/<style|\sstyle=|\son[a-z]+=|<script(?![^>]*\bsrc=)|javascript:/)
  })
})
