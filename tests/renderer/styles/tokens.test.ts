import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const css = readFileSync(new URL('../../../src-renderer/styles/tokens.css', import.meta.url), 'utf8')

/** Custom properties with a plain colour in the block that opens with `head`. */
function colours(head: string): ReadonlyMap<string, string> {
  const start = css.indexOf(head)
  expect(start).toBeGreaterThanOrEqual(0)
  const block = css.slice(start, css.indexOf('}', start))
  return new Map(
    [...block.matchAll(/(--[\w-]+):\s*(#[0-9a-f]{6});/gu)].map(([, name = '', value = '']) => [name, value]),
  )
}

const THEMES = {
  light: colours(':root {'),
  dark: colours(":root[data-theme='dark']"),
  'dark by the computer': colours(':root:not('),
}

/** Relative luminance and contrast ratio: WCAG 2.2, definitions "relative luminance" and "contrast ratio". */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}
const contrast = (a: string, b: string): number => {
  const [hi = 0, lo = 0] = [luminance(a), luminance(b)].toSorted((x, y) => y - x)
  return (hi + 0.05) / (lo + 0.05)
}

const GROUNDS = ['--ground', '--surface', '--surface-2'] as const
const TEXT: readonly (readonly [string, string])[] = [
  ...GROUNDS.flatMap((ground) => ['--ink', '--ink-soft', '--accent'].map((text) => [text, ground] as const)),
  ['--on-accent', '--accent'],
  ['--ink', '--accent-soft'],
  ['--accent', '--accent-soft'],
  ['--ink-soft', '--accent-soft'],
  ...['good', 'warn', 'bad'].flatMap(
    (tone) =>
      [
        [`--${tone}`, '--surface'],
        [`--${tone}`, `--${tone}-soft`],
        ['--ink', `--${tone}-soft`],
      ] as const,
  ),
]
const MARKS: readonly (readonly [string, string])[] = [
  ...GROUNDS.flatMap((ground) =>
    ['--line-strong', '--focus', '--accent', '--good', '--warn', '--bad'].map(
      (mark) => [mark, ground] as const,
    ),
  ),
  ...[1, 2, 3, 4, 5].map((series) => [`--series-${series}`, '--surface'] as const),
]

describe.each(Object.entries(THEMES))('the %s theme', (_name, theme) => {
  const of = (token: string): string => {
    const value = theme.get(token)
    if (value === undefined) throw new Error(`${token} is not in this theme`)
    return value
  }
  it.each(TEXT)('text %s on %s reaches 4.5:1 (WCAG 1.4.3)', (text, ground) => {
    expect(contrast(of(text), of(ground))).toBeGreaterThanOrEqual(4.5)
  })
  it.each(MARKS)('mark %s on %s reaches 3:1 (WCAG 1.4.11)', (mark, ground) => {
    expect(contrast(of(mark), of(ground))).toBeGreaterThanOrEqual(3)
  })
})

describe('themes', () => {
  it('are the same dark, chosen by the person or by the computer', () => {
    expect([...THEMES['dark by the computer']]).toEqual([...THEMES.dark])
  })
  it('measure contrast as the published examples do', () => {
    // WCAG 2.2 Understanding 1.4.3: black on white 21:1; #777777 on white 4.48:1 (from memory of the article)
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2)
  })
})
