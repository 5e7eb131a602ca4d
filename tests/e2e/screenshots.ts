import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { chromium, type Browser, type Page } from '@playwright/test'
import { findChromium } from '../support/chromium'
import { LAUNCH_FLAGS } from './support/flags'
import { dropFolder, startHost } from './support/host'

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
  await page.getByRole('button', { name: 'Start a visit' }).click()
  await shoot(page, folder, 'visit-conditions')
  await page.getByText('Rinse aid pump').first().click()
  await shoot(page, folder, 'visit-bench-empty')
  await page.getByText('Close the visit').first().click()
  await shoot(page, folder, 'visit-close')
  await context.close()
  await host.stop()
  dropFolder(host.dataFolder)
}

const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: [...LAUNCH_FLAGS] })
for (const size of Object.keys(SIZES) as (keyof typeof SIZES)[])
  for (const theme of THEMES) await round(browser, size, theme)
await browser.close()
console.log(`Wrote ${OUT}`)
