import { expect, type Page } from '@playwright/test'
import { benchOf, goToPart, pass, quickTime, watch } from '../visit-hands'
import { openAt as open } from '../support/history'
import { addDemoSites } from '../support/program'

/** A place of the program, or a state of one, and what the window title has to name there. */
export interface Place {
  readonly name: string
  readonly title: RegExp
  /** how to come to it from wherever the walk stands */
  readonly come: (page: Page, site: string) => Promise<unknown>
}

/** What `see` found wrong at a place; the walk puts the name of the place before it. */
export type See = (page: Page, place: Place) => Promise<readonly string[]>

/** Waits until the page has come to rest: a watch that runs never does, so not for ever. */
export const rest = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done) => {
        let quiet = setTimeout(done, 120)
        const observer = new MutationObserver(() => {
          clearTimeout(quiet)
          quiet = setTimeout(done, 120)
        })
        observer.observe(document.body, { subtree: true, childList: true, attributes: true })
        setTimeout(done, 1500)
      }),
  )

const at =
  (path: string): Place['come'] =>
  (page, site) =>
    open(page, path.replace('SITE', site))

const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll<HTMLDetailsElement>('main details')) fold.open = true
  })

const racks = (page: Page) => page.getByRole('textbox', { name: 'Racks washed' })
const seconds = (page: Page) => page.getByRole('textbox', { name: /^Runs for one rack/u }).first()

export const EMPTY: Place = { name: 'first start', title: /^Sites – /u, come: () => Promise.resolve() }

/** In this order: a state is reached from the one before it. */
export const PLACES: readonly Place[] = [
  { name: 'sites', title: /^Sites – /u, come: at('#/') },
  {
    name: 'dialog for a new site',
    title: /^Sites – /u,
    come: (page) => page.getByRole('button', { name: 'New site' }).click(),
  },
  { name: 'portfolio', title: /^Portfolio – /u, come: at('#/portfolio') },
  { name: 'products', title: /^Products – /u, come: at('#/products') },
  {
    name: 'a product',
    title: /^Products – /u,
    come: (page) => page.getByRole('button', { name: /^Chlorine sanitizer/u }).click(),
  },
  { name: 'instruments', title: /^Instruments – /u, come: at('#/instruments') },
  {
    name: 'an instrument',
    title: /^Instruments – /u,
    come: (page) => page.getByRole('button', { name: /^10 mL cylinder/u }).click(),
  },
  { name: 'settings', title: /^Settings – /u, come: at('#/settings') },
  {
    name: 'help',
    title: /^Settings – /u,
    come: (page) => page.getByRole('button', { name: 'Help' }).click(),
  },
  {
    name: 'site',
    title: /^Lantern Lane Cafe – Overview – /u,
    come: async (page, site) => {
      await page.keyboard.press('Escape')
      await open(page, site)
    },
  },
  { name: 'trend', title: /^Lantern Lane Cafe – Trend – /u, come: at('SITE/trend') },
  { name: 'spend', title: /^Lantern Lane Cafe – Spend – /u, come: at('SITE/spend') },
  { name: 'glass check', title: /^Lantern Lane Cafe – Glass check – /u, come: at('SITE/glass') },
  {
    name: 'set-up with all folds open',
    title: /^Lantern Lane Cafe – Set-up – /u,
    come: async (page, site) => {
      await open(page, `${site}/setup`)
      await unfold(page)
    },
  },
  {
    name: 'set-up with a number to be asked about, and one that is none',
    title: /^Lantern Lane Cafe – Set-up – /u,
    come: async (page) => {
      await racks(page).fill('1,234')
      await seconds(page).fill('12x')
      await page.keyboard.press('Tab')
    },
  },
  {
    name: 'conditions',
    title: /^Lantern Lane Cafe – Visit – /u,
    come: async (page, site) => {
      await racks(page).fill('45')
      await seconds(page).fill('9')
      await open(page, site)
      await page.getByRole('button', { name: 'Start a visit' }).click()
      await page.getByRole('radio', { name: 'Not in order' }).first().check()
    },
  },
  {
    name: 'cautions of a pump',
    title: /^Lantern Lane Cafe – Visit – /u,
    come: (page) => goToPart(page, /Rinse aid pump/u),
  },
  {
    name: 'bench before runs',
    title: /^Lantern Lane Cafe – Visit – /u,
    come: async (page) => {
      await benchOf(page, /Rinse aid pump/u)
      await page.getByRole('button', { name: 'Change', exact: true }).click()
    },
  },
  {
    name: 'bench with runs, workings open',
    title: /^Lantern Lane Cafe – Visit – /u,
    come: async (page) => {
      await page.getByRole('button', { name: 'Done', exact: true }).click()
      await page.getByRole('textbox', { name: /^Level before/u }).fill('10')
      for (const after of ['3.4', '3.3', '3.4']) {
        await watch(page).click()
        await expect(watch(page)).toContainText('Stop early')
        await pass(page, 60.05)
        await expect(page.getByRole('textbox', { name: /^Level after/u })).toBeFocused()
        await page.keyboard.type(after)
      }
      await page.getByRole('button', { name: 'Working of flow' }).click()
      await page.getByRole('button', { name: 'Change run 2' }).click()
      await page.getByText('Working of this run').click()
    },
  },
  {
    name: 'closing',
    title: /^Lantern Lane Cafe – Visit – /u,
    come: async (page) => {
      await goToPart(page, /Close the visit/u)
      await page.getByText('Count the stock').click()
    },
  },
  {
    name: 'report',
    title: /^Lantern Lane Cafe – Service report – /u,
    come: async (page, site) => {
      await open(page, site)
      await page.locator('main a[href$="/report"]').first().click()
      await expect(page.getByRole('article', { name: 'For the file' })).toBeVisible()
    },
  },
]

/** Goes through the whole program once, from its first start, and gathers what is wrong anywhere. */
export async function walk(page: Page, see: See, before?: (page: Page) => Promise<void>): Promise<string[]> {
  const found: string[] = []
  const look = async (place: Place): Promise<void> => {
    await rest(page)
    for (const fault of await see(page, place)) found.push(`${place.name}: ${fault}`)
  }
  await quickTime(page)
  await before?.(page)
  await look(EMPTY)
  await addDemoSites(page)
  const link = page.getByRole('link', { name: 'Lantern Lane Cafe' })
  const site = (await link.getAttribute('href')) ?? ''
  for (const place of PLACES) {
    await place.come(page, site)
    await look(place)
    if (place.name.startsWith('dialog') || place.name === 'help') await page.keyboard.press('Escape')
  }
  return found
}
