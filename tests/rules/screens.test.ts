import { describe, expect, it } from 'vitest'
import { places, sources } from './sources'

const markup = sources('src-renderer', ['.svelte', '.html'])
const renderer = sources('src-renderer', ['.svelte', '.html', '.ts'])

describe('rules every screen keeps', () => {
  it('there are screens to look at', () => {
    expect(markup.length).toBeGreaterThan(10)
  })

  it('no number field of the browser, whose value changes under a wheel and loses a decimal comma', () => {
    expect(places(markup, /type=["'{]*number/u)).toEqual([])
  })

  it('no placeholder stands in for a label', () => {
    expect(places(markup, /\bplaceholder=/u)).toEqual([])
  })

  it('no style in the markup and no script in the page: the content policy forbids both', () => {
    expect(places(markup, /\sstyle=["']/u)).toEqual([])
    expect(places(sources('src-renderer', ['.html']), /<script(?![^>]*\bsrc=)/u)).toEqual([])
    expect(places(markup, /\bon[a-z]+=["']/u)).toEqual([])
  })

  it('no raw markup is put into a page', () => {
    expect(places(markup, /\{@html/u)).toEqual([])
    expect(places(renderer, /\.(?:inner|outer)HTML\b|insertAdjacentHTML/u)).toEqual([])
  })

  it('no bare toFixed in a screen: rounding has a name and lives in the core', () => {
    const shown = [
      ...markup,
      ...['screens', 'pictures', 'charts', 'parts', 'shell'].flatMap((folder) =>
        sources(`src-renderer/${folder}`, ['.ts']),
      ),
    ]
    expect(places(shown, /\.to(?:Fixed|Precision)\(/u)).toEqual([])
  })

  it('no formula of the trade in a screen: sixty seconds, a thousand millilitres and square roots live in the core', () => {
    expect(
      places(
        sources('src-renderer/screens', ['.svelte', '.ts']),
        /Math\.(?:sqrt|exp|log|pow)|\* ?1000\b|\/ ?1e6/u,
      ),
    ).toEqual([])
  })

  it('no word of statistics beside a box that a rep fills in: what it means is said', () => {
    expect(places(markup, /standard (?:uncertainty|deviation)|\bhint="[^"]*\bsigma\b/iu)).toEqual([])
  })

  it('nothing reaches for the network', () => {
    expect(places(markup, /(?:src|href)=["']https?:/u)).toEqual([])
    expect(places(sources('src-renderer', ['.css']), /url\(["']?https?:|@import/u)).toEqual([])
  })
})
