import type { Browser, Page } from '@playwright/test'
import { dropFolder, startHost } from '../support/host'
import { quickTime } from '../visit-hands'
import { bareVisits } from './bare-visits'
import { Camera, VIEWPORTS, type Round } from './camera'
import { kitchen, money, tanks } from './kitchen-and-tanks'
import { visitGoneWell } from './visit-gone-well'
import { visitGoneWrong } from './visit-gone-wrong'

interface Place {
  readonly name: string
  readonly hash: string
  readonly come?: (page: Page) => Promise<unknown>
}

/** The screens that are not the visit, by the sites that show most of them. */
function places(site: (name: string) => string): readonly Place[] {
  const cafe = site('Lantern Lane Cafe')
  const diner = site('Copper Spoon Diner')
  return [
    { name: 'sites', hash: '#/' },
    {
      name: 'new-site',
      hash: '#/',
      come: (page) => page.getByRole('button', { name: 'New site' }).click(),
    },
    { name: 'site', hash: cafe },
    { name: 'site-two-machines', hash: site('Quayside Banqueting') },
    { name: 'trend', hash: `${cafe}/trend` },
    { name: 'trend-sanitizer', hash: `${diner}/trend` },
    { name: 'spend', hash: `${cafe}/spend` },
    { name: 'setup', hash: `${diner}/setup` },
    { name: 'setup-unfolded', hash: `${diner}/setup`, come: unfold },
    { name: 'glass', hash: `${cafe}/glass` },
    {
      name: 'portfolio',
      hash: '#/portfolio',
      come: (page) => page.getByText(/^Working out \d/u).waitFor({ state: 'hidden' }),
    },
    { name: 'products', hash: '#/products' },
    {
      name: 'product',
      hash: '#/products',
      come: (page) => page.getByRole('button', { name: /^Chlorine sanitizer/u }).click(),
    },
    { name: 'instruments', hash: '#/instruments' },
    { name: 'settings', hash: '#/settings' },
    { name: 'help', hash: '#/settings', come: (page) => page.getByRole('button', { name: 'Help' }).click() },
  ]
}

const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true
  })

/** One size and theme: a host on a folder of its own, from its first start. Gives the number of pictures. */
export async function round(browser: Browser, one: Round): Promise<number> {
  const host = await startHost()
  const context = await browser.newContext({
    viewport: VIEWPORTS[one.size],
    colorScheme: one.theme,
    reducedMotion: 'reduce',
    hasTouch: one.size !== 'laptop',
  })
  const page = await context.newPage()
  const camera = new Camera(page, one)
  await page.goto(await host.address())
  await quickTime(page)
  await page.getByRole('button', { name: /demo sites/iu }).waitFor()
  await camera.shoot('first-start')
  await page.getByRole('button', { name: /demo sites/iu }).click()
  const links = page.locator('a[href^="#/site/"]')
  await links.first().waitFor()
  const hrefs = await links.evaluateAll((all) =>
    all.map((link) => ({ href: link.getAttribute('href') ?? '', text: link.textContent })),
  )
  const site = (name: string): string => hrefs.find((link) => link.text.includes(name))?.href ?? '#/'
  const open = async (hash: string): Promise<void> => {
    await page.goto(`${host.origin}/${hash}`)
    await page.locator('main h1').first().waitFor()
  }
  for (const { name, hash, come } of places(site)) {
    await open(hash)
    await come?.(page)
    await camera.shoot(name)
    await page.keyboard.press('Escape')
  }
  await open(site('Lantern Lane Cafe'))
  await visitGoneWell(camera)
  await open(site('Copper Spoon Diner'))
  await visitGoneWrong(camera)
  await money(camera, open, site('Copper Spoon Diner'))
  await tanks(camera, open, site('Quayside Banqueting'))
  await kitchen(camera, open, site('Lantern Lane Cafe'))
  await bareVisits(camera, open)
  await context.close()
  await host.stop()
  dropFolder(host.dataFolder)
  return camera.taken
}
