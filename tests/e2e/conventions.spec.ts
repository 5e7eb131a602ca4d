import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import {
  cutTexts,
  focusFaults,
  moving,
  sideways,
  smallControls,
  spaceTexts,
  unnamed,
  watchFocus,
  signsApart,
} from './conventions/in-page'
import { walk } from './conventions/walk'
import { expect, test } from './support/program'

/** Rules every screen keeps, from its first start to its report. The program fixture watches policy and requests. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']

async function breaches(page: Page, colours = false): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] })
  // a theme changes colours and nothing else
  const found = await (
    colours ? axe.withRules(['color-contrast', 'link-in-text-block']) : axe.withTags(TAGS)
  ).analyze()
  const all = found.violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => ({ id, html })))
  const tooSmall = all.some(({ id }) => id === 'target-size') ? await smallElsewhere(page) : new Set<string>()
  return all
    .filter(({ id, html }) => id !== 'target-size' || tooSmall.has(html))
    .map(({ id, html }) => `${id}: ${html.slice(0, 140)}`)
}

/** Targets that are too small with the page scrolled on as well: one half under the bar at the top is not. */
async function smallElsewhere(page: Page): Promise<ReadonlySet<string>> {
  const scrolled = (by: number): Promise<void> => page.evaluate((px) => scrollBy(0, px), by)
  await scrolled(-150)
  const found = await new AxeBuilder({ page }).withRules(['target-size']).analyze()
  await scrolled(150)
  return new Set(found.violations.flatMap(({ nodes }) => nodes.map(({ html }) => html)))
}

const HELP = 'body header.no-print > .tools > button:last-of-type'

test.describe.configure({ mode: 'parallel' })
// a trace of every Tab takes longer than the walk
test.use({ trace: 'off', actionTimeout: 20_000 })

test.describe('in the light theme, with less motion asked for', () => {
  test.use({ colorScheme: 'light', contextOptions: { reducedMotion: 'reduce' } })

  test('every screen is named, labelled, large enough for gloves, still, and breaks no rule of access', async ({
    program,
  }) => {
    const places = new Set<string>()
    const found = await walk(program, async (page, place) => {
      const title = await page.title()
      const box = await page.locator(HELP).boundingBox()
      places.add(`${Math.round(box?.x ?? -1)}, ${Math.round(box?.y ?? -1)}`)
      return [
        ...(place.title.test(title.replace(/^(?:[^–•]*· )?(?:• )?/u, ''))
          ? []
          : [`the title says “${title}”`]),
        ...((await page.locator(HELP).textContent())?.trim() === 'Help' ? [] : ['help is not in its place']),
        ...(await moving(page)),
        ...(await unnamed(page)),
        ...(await signsApart(page)),
        ...(await smallControls(page)),
        ...(await breaches(page)),
      ]
    })
    expect(found).toEqual([])
    expect(places.size, 'help stands in one place, whatever the screen').toBe(1)
  })
})

test.describe('in the dark theme', () => {
  test.use({ colorScheme: 'dark' })

  test('no colour breaks a rule of access on any screen', async ({ program }) => {
    expect(await walk(program, (page) => breaches(page, true))).toEqual([])
  })
})

// 1280 px at 400 % is 320 CSS px wide and 256 high (WCAG 2.1, understanding 1.4.10)
test.describe('in a window of 320 by 256 px, which is 400 % zoom', () => {
  test.use({ viewport: { width: 320, height: 256 } })

  test('no screen scrolls sideways or loses a control', async ({ program }) => {
    expect(await walk(program, sideways)).toEqual([])
  })
})

test.describe('with the text spacing a reader may set', () => {
  test.use({ viewport: { width: 360, height: 640 } })

  test('no screen loses a word or scrolls sideways', async ({ program }) => {
    await spaceTexts(program)
    const found = await walk(program, async (page) => [...(await sideways(page)), ...(await cutTexts(page))])
    expect(found).toEqual([])
  })
})

for (const [window, viewport] of [
  ['a phone', { width: 412, height: 900 }],
  ['a tablet', { width: 820, height: 1180 }],
] as const)
  test.describe(`with letters twice as large, on ${window}`, () => {
    test.use({ viewport })

    // WCAG 2.1, 1.4.4
    test('no screen scrolls sideways or loses a control', async ({ program }) => {
      await program.addInitScript(() =>
        addEventListener('DOMContentLoaded', () => {
          document.documentElement.style.fontSize = '200%'
        }),
      )
      await program.reload()
      expect(await walk(program, sideways)).toEqual([])
    })
  })

test.describe('in a small window', () => {
  test.use({ viewport: { width: 1024, height: 560 } })

  test('the keyboard is seen wherever it stands, on every screen', async ({ program }) => {
    await watchFocus(program)
    expect(await walk(program, focusFaults)).toEqual([])
  })
})
