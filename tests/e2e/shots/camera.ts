import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'

const OUT =
  process.env['DOSEWRIGHT_SHOTS'] ?? fileURLToPath(new URL('../../../screenshots/', import.meta.url))

export const SIZES = ['laptop', 'tablet', 'phone'] as const
export const THEMES = ['light', 'dark'] as const
export type Size = (typeof SIZES)[number]

export interface Round {
  readonly size: Size
  readonly theme: (typeof THEMES)[number]
}

export const VIEWPORTS: Readonly<Record<Size, { readonly width: number; readonly height: number }>> = {
  laptop: { width: 1366, height: 768 },
  tablet: { width: 820, height: 1180 },
  phone: { width: 360, height: 740 },
}

/** Takes whole-page pictures of one round, numbered in the order they were taken. */
export class Camera {
  taken = 0
  readonly #folder: string

  constructor(
    readonly page: Page,
    { size, theme }: Round,
  ) {
    this.#folder = join(OUT, `${size}-${theme}`)
    mkdirSync(this.#folder, { recursive: true })
  }

  async shoot(name: string): Promise<void> {
    this.taken += 1
    await this.page.evaluate(() => document.fonts.ready)
    // a bar that sticks to the window is drawn where the page stands
    await this.page.evaluate(() => scrollTo(0, 0))
    await this.page.waitForTimeout(250)
    const file = `${String(this.taken).padStart(2, '0')}-${name}.png`
    await this.page.screenshot({ path: join(this.#folder, file), fullPage: true })
  }
}
