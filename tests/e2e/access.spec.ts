import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, openDemoSite, test } from './support/program'

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']

async function faults(page: Page): Promise<readonly string[]> {
  const found = await new AxeBuilder({ page }).withTags(TAGS).analyze()
  return found.violations.map(
    (violation) => `${violation.id}: ${violation.nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`,
  )
}

/** Controls that are lower than a gloved finger wants. Links inside a sentence are text, not controls. */
const low = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'button, input:not([type=file], [type=radio], [type=checkbox]), select, textarea, nav a, summary',
      ),
    ]
      .filter(
        (element) =>
          element.checkVisibility({ visibilityProperty: true }) && element.getBoundingClientRect().width > 1,
      )
      .filter((element) => element.getBoundingClientRect().height < 44 && !element.matches('.gap'))
      .map((element) => element.outerHTML.slice(0, 160)),
  )

const over = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)

/** Every place of the frame, in the states it can be in. */
async function walk(page: Page, see: (place: string) => Promise<void>): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/`)
  await see('sites')
  const site = (await page.getByRole('link', { name: 'Copper Spoon Diner' }).getAttribute('href')) ?? ''
  await page.getByRole('button', { name: 'New site' }).click()
  await see('new site')
  await page.keyboard.press('Escape')
  await page.goto(`${new URL(page.url()).origin}/${site}`)
  await expect(page.getByRole('heading', { name: 'What comes next' })).toBeVisible()
  await see('site')
  await page.goto(`${new URL(page.url()).origin}/${site}/setup`)
  await expect(page.getByRole('heading', { name: 'Calendar' })).toBeVisible()
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true
  })
  const racks = page.getByRole('textbox', { name: 'Racks washed' })
  await racks.fill('1,234')
  await see('set-up with all folds open and a number to be asked about')
  await racks.fill('12x')
  await racks.blur()
  await see('set-up with a text that is no number')
  await page.goto(`${new URL(page.url()).origin}/#/products`)
  await page.getByRole('button', { name: /^Chlorine sanitizer/u }).click()
  await see('product')
  await page.goto(`${new URL(page.url()).origin}/#/instruments`)
  await page.getByRole('button', { name: /^10 mL cylinder/u }).click()
  await see('instrument')
  await page.goto(`${new URL(page.url()).origin}/#/settings`)
  await see('settings')
  await page.getByRole('button', { name: 'Help' }).click()
  await see('help')
  await page.keyboard.press('Escape')
}

for (const theme of ['light', 'dark'] as const)
  test(`no screen of the frame breaks the accessibility rules in the ${theme} theme`, async ({
    program: page,
  }) => {
    test.setTimeout(240_000)
    await openDemoSite(page, 'Copper Spoon Diner')
    await page.goto(`${new URL(page.url()).origin}/#/settings`)
    await page.getByLabel(theme, { exact: true }).check()
    const found: string[] = []
    await walk(page, async (place) => {
      for (const fault of await faults(page)) found.push(`${place}: ${fault}`)
      for (const control of await low(page)) found.push(`${place}: lower than 44 px: ${control}`)
    })
    expect(found).toEqual([])
  })

test('no screen of the frame scrolls sideways in a window of 320 px', async ({ program: page }) => {
  test.setTimeout(120_000)
  await openDemoSite(page, 'Copper Spoon Diner')
  await page.setViewportSize({ width: 320, height: 640 })
  const found: string[] = []
  await walk(page, async (place) => {
    const px = await over(page)
    if (px > 0) found.push(`${place}: ${px} px`)
  })
  expect(found).toEqual([])
})

test('wheel and arrow keys change no number, and every control shows where the keyboard is', async ({
  program: page,
}) => {
  test.setTimeout(120_000)
  await openDemoSite(page, 'Copper Spoon Diner')
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  const racks = page.getByRole('textbox', { name: 'Racks washed' })
  const before = await racks.inputValue()
  await racks.focus()
  await racks.hover()
  await page.mouse.wheel(0, 240)
  await page.keyboard.press('ArrowUp')
  expect(await racks.inputValue()).toBe(before)
  await page.evaluate(() => document.body.focus())
  for (let step = 0; step < 40; step += 1) {
    await page.keyboard.press('Tab')
    const seen = await page.evaluate(() => {
      const here = document.activeElement
      if (here === null || here === document.body) return true
      const shown = here.matches('input[type=radio]') ? (here.closest('label') ?? here) : here
      const style = getComputedStyle(shown)
      return style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2
    })
    expect(seen).toBe(true)
  }
})
