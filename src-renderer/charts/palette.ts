/** The theme's colours, as a canvas needs them: plain colour texts. */
export interface Palette {
  readonly series: readonly string[]
  readonly ink: string
  readonly inkSoft: string
  readonly line: string
  readonly lineStrong: string
  readonly surface: string
  readonly accent: string
  readonly accentSoft: string
  readonly good: string
  readonly warn: string
  readonly bad: string
}

const SERIES = ['--series-1', '--series-2', '--series-3', '--series-4', '--series-5']

/** Reads the palette off an element, as the cascade gives it there and now. */
export function paletteOf(element: Element): Palette {
  const style = getComputedStyle(element)
  const colour = (name: string): string => style.getPropertyValue(name).trim()
  return {
    series: SERIES.map(colour),
    ink: colour('--ink'),
    inkSoft: colour('--ink-soft'),
    line: colour('--line'),
    lineStrong: colour('--line-strong'),
    surface: colour('--surface'),
    accent: colour('--accent'),
    accentSoft: colour('--accent-soft'),
    good: colour('--good'),
    warn: colour('--warn'),
    bad: colour('--bad'),
  }
}
