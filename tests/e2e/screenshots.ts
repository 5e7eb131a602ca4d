import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { chromium, type Browser, type Page } from '@playwright/test'
import { findChromium } from '../support/chromium'
import { LAUNCH_FLAGS } from './support/flags'
import { dropFolder, startHost } from './support/host'
import { benchOf, countedRun, Hands, quickTime, watch } from './visit-hands'

/**
 * `npm run screenshots`: every screen and its main states, on a laptop, a tablet and a phone, light and dark, empty and
 * with the demo sites, into the git-ignored folder `screenshots`. To be looked at by a person.
 */
const OUT = fileURLToPath(new URL('../../screenshots/', import.meta.url))

const SIZES = {
  laptop: { width: 1366, height: 768 },
  tablet: { width: 820, height: 1180 },
  phone: { width: 360, height: 740 },
} as const

const THEMES = ['light', 'dark'] as const

interface Place {
  readonly name: string
  readonly hash: string
}

async function places(page: Page): Promise<readonly Place[]> {
  const links = page.locator('a[href^="#/site/"]')
  await links.first().waitFor()
  const hrefs = await links.evaluateAll((all) =>
    all.map((one) => ({ href: one.getAttribute('href') ?? '', text: one.textContent })),
  )
  const site = (name: string): string => hrefs.find((one) => one.text.includes(name))?.href ?? '#/'
  const cafe = site('Lantern Lane Cafe')
  const diner = site('Copper Spoon Diner')
  return [
    { name: 'sites', hash: '#/' },
    { name: 'site', hash: cafe },
    { name: 'site-two-machines', hash: site('Quayside Banqueting') },
    { name: 'trend', hash: `${cafe}/trend` },
    { name: 'spend', hash: `${cafe}/spend` },
    { name: 'setup', hash: `${diner}/setup` },
    { name: 'glass', hash: `${cafe}/glass` },
    { name: 'portfolio', hash: '#/portfolio' },
    { name: 'products', hash: '#/products' },
    { name: 'instruments', hash: '#/instruments' },
    { name: 'settings', hash: '#/settings' },
  ]
}

async function shoot(page: Page, folder: string, name: string): Promise<void> {
  await page.waitForTimeout(700)
  await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true })
}

/** A visit as it goes: conditions, cautions, bench, turn, proof, close, report. */
async function visit(page: Page, folder: string): Promise<void> {
  const hands = new Hands(page, 'keys')
  await page.getByRole('button', { name: 'Start a visit' }).click()
  await shoot(page, folder, 'visit-1-conditions')
  for (let group = 0; group < 4; group += 1)
    await page.getByRole('button', { name: /^All \d+ in order$/u }).click()
  await page
    .getByRole('navigation', { name: 'Parts of the visit' })
    .getByRole('button', { name: /Rinse aid pump/u })
    .click()
  await shoot(page, folder, 'visit-2-cautions')
  await benchOf(page, /Rinse aid pump/u)
  await page.getByRole('button', { name: 'Line is primed' }).click()
  await shoot(page, folder, 'visit-3-bench')
  await hands.enter(page.getByRole('textbox', { name: /^Level before/u }), '10')
  await hands.press('Enter')
  for (const after of ['3.4', '3.3', '3.4']) await countedRun(hands, after)
  await shoot(page, folder, 'visit-4-turn')
  await page.getByRole('button', { name: 'Turned it', exact: true }).click()
  await shoot(page, folder, 'visit-5-turned')
  await watch(page).focus()
  for (const after of ['3.9', '3.9', '3.95']) await countedRun(hands, after)
  await shoot(page, folder, 'visit-6-result')
  await page.getByRole('button', { name: /Close the visit/u }).click()
  await shoot(page, folder, 'visit-7-close')
  await page.getByRole('button', { name: /^Guards, labels, caps and tubes/u }).click()
  await page.getByRole('button', { name: 'Close visit and show the report' }).click()
  await shoot(page, folder, 'visit-8-report')
}

async function round(
  browser: Browser,
  size: keyof typeof SIZES,
  theme: (typeof THEMES)[number],
): Promise<void> {
  const folder = `${OUT}${size}-${theme}`
  mkdirSync(folder, { recursive: true })
  const host = await startHost()
  const context = await browser.newContext({
    viewport: SIZES[size],
    colorScheme: theme,
    reducedMotion: 'reduce',
    hasTouch: size !== 'laptop',
  })
  const page = await context.newPage()
  await page.goto(await host.address())
  await quickTime(page)
  await page.getByRole('button', { name: /demo sites/iu }).waitFor()
  await shoot(page, folder, 'first-start')
  await page.getByRole('button', { name: /demo sites/iu }).click()
  const all = await places(page)
  for (const { name, hash } of all) {
    await page.goto(`${host.origin}/${hash}`)
    await shoot(page, folder, name)
  }
  const cafe = all.find((one) => one.name === 'site')?.hash ?? '#/'
  await page.goto(`${host.origin}/${cafe}`)
  await visit(page, folder)
  await context.close()
  await host.stop()
  dropFolder(host.dataFolder)
}

const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: [...LAUNCH_FLAGS] })
for (const size of Object.keys(SIZES) as (keyof typeof SIZES)[])
  for (const theme of THEMES) await round(browser, size, theme)
await browser.close()
console.log(`Wrote ${OUT}`)
