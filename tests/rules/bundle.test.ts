import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { root } from './sources'

/** What `npm run build` made; `npm test` builds before it comes here. */
const built = `${root}out/renderer/`
const assets = `${built}assets/`

const STATIC_IMPORT = /(?:\bfrom|\bimport)\s*"\.\/([\w.-]+\.js)"/gu

/** A chunk and all it imports at once, that is, without `import()`. */
function withImports(names: readonly string[], found = new Set<string>()): ReadonlySet<string> {
  for (const name of names) {
    if (found.has(name)) continue
    found.add(name)
    const code = readFileSync(`${assets}${name}`, 'utf8')
    withImports(
      [...code.matchAll(STATIC_IMPORT)].flatMap(([, other]) => other ?? []),
      found,
    )
  }
  return found
}

const chunk = (start: string): readonly string[] =>
  readdirSync(assets).filter((name) => name.startsWith(`${start}-`) && name.endsWith('.js'))

const first = (): readonly string[] =>
  [
    ...readFileSync(`${built}index.html`, 'utf8').matchAll(/(?:src|href)="\.\/assets\/([\w.-]+\.js)"/gu),
  ].flatMap(([, name]) => name ?? [])

const zipped = (names: ReadonlySet<string>): number =>
  [...names].reduce((sum, name) => sum + gzipSync(readFileSync(`${assets}${name}`)).length, 0)

const code = (names: ReadonlySet<string>): string =>
  [...names].map((name) => readFileSync(`${assets}${name}`, 'utf8')).join('\n')

/** Words that outlive minifying: of the charts, the decimals and the distributions. */
const HEAVY = { charts: 'acquireContext', decimals: '[DecimalError]', distributions: 'gammaincinv' }

describe.skipIf(!existsSync(`${built}index.html`))('the built window', () => {
  it('needs at most 120 kB of zipped code before the list of sites stands', () => {
    const names = withImports([...first(), ...chunk('SitesScreen')])
    expect(names.size).toBeGreaterThan(2)
    expect(zipped(names)).toBeGreaterThan(10_000)
    expect(zipped(names)).toBeLessThanOrEqual(120_000)
  })

  it('fetches charts, decimals and distributions only where they are used, and no parser of documents at all', () => {
    const before = code(withImports([...first(), ...chunk('SitesScreen')]))
    const anywhere = code(new Set(readdirSync(assets).filter((name) => name.endsWith('.js'))))
    for (const [what, word] of Object.entries(HEAVY)) {
      expect([what, anywhere.includes(word)]).toEqual([what, true])
      expect([what, before.includes(word)]).toEqual([what, false])
    }
    // the host has checked every answer; a second parser in the window would only cost
    expect(anywhere).not.toContain('_zod')
  })

  it('draws no chart library into a screen at once: it comes with the first chart', () => {
    const screens = readdirSync(assets).filter((name) => /^[A-Z]\w*Screen-[\w-]+\.js$/u.test(name))
    expect(screens.length).toBeGreaterThan(5)
    const withCharts = screens.filter((name) => code(withImports([name])).includes(HEAVY.charts))
    expect(withCharts).toEqual([])
  })

  it('carries one font file, cut down to Latin', () => {
    const fonts = readdirSync(assets).filter((name) => /\.(?:woff2?|ttf|otf)$/u.test(name))
    expect(fonts.every((name) => name.includes('latin') && !name.includes('latin-ext'))).toBe(true)
    expect(fonts.length).toBe(1)
    expect(readFileSync(`${assets}${fonts[0] ?? ''}`).length).toBeLessThan(64_000)
  })
})
