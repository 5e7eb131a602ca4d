import { EventEmitter, once } from 'node:events'
import { readFileSync } from 'node:fs'
import type { Browser, Page } from '@playwright/test'
import { startHost, type RunningHost } from './support/host'
import { addDemoSites, expect, test, watched } from './support/program'

const SITES = ['Copper Spoon Diner', 'Lantern Lane Cafe', 'Millbrook School kitchen']

async function openHost(browser: Browser): Promise<{ readonly page: Page; readonly host: RunningHost }> {
  const host = await startHost()
  const page = await browser.newPage()
  const wrongs = await watched(page, host.origin)
  await page.goto(await host.address())
  page.on('close', () => expect(wrongs).toEqual([]))
  return { page, host }
}

async function saveEverything(page: Page): Promise<Buffer> {
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save everything as one file' }).click()
  const saved = await download
  expect(saved.suggestedFilename()).toMatch(/^everything \d{4}-\d\d-\d\d\.dosewright\.json$/u)
  return readFileSync(await saved.path())
}

const bringIn = (page: Page, buffer: Buffer): Promise<void> =>
  page.locator('#site-file').setInputFiles({ name: 'everything.json', mimeType: 'application/json', buffer })
const sitesOf = (file: Buffer): Record<string, unknown>[] =>
  (JSON.parse(file.toString()) as { readonly sites: Record<string, unknown>[] }).sites
const dialog = (page: Page) => page.getByRole('dialog', { name: 'Bring in many sites' })
const names = async (page: Page): Promise<readonly string[]> =>
  (await page.getByRole('main').getByRole('link').allTextContents()).toSorted()

test('everything of one computer comes to another in one file, products nobody uses yet too', async ({
  browser,
}) => {
  const from = await openHost(browser)
  await addDemoSites(from.page)
  await from.page.getByRole('link', { name: 'Products' }).click()
  await from.page.getByRole('button', { name: 'Detergent: add a product' }).click()
  await from.page.getByRole('textbox', { name: 'Name' }).fill('Spare detergent')
  await from.page.getByRole('textbox', { name: 'Name' }).blur()
  await expect(from.page.getByText(/^Saved \d\d:\d\d$/u).first()).toBeVisible()
  await from.page.getByRole('link', { name: 'Sites', exact: true }).click()
  const file = await saveEverything(from.page)
  const there = await names(from.page)
  for (const site of SITES) expect(there.join()).toContain(site)

  const to = await openHost(browser)
  await bringIn(to.page, file)
  await expect(dialog(to.page)).toContainText(new RegExp(`Not here yet\\s*${there.length} sites`, 'u'))
  await dialog(to.page)
    .getByRole('button', { name: `Bring in ${there.length} sites` })
    .click()
  await expect(dialog(to.page).getByRole('status')).toContainText(`${there.length} sites added`)
  await dialog(to.page).getByRole('button', { name: 'Good' }).click()
  await expect.poll(() => names(to.page)).toEqual(there)
  await to.page.getByRole('link', { name: 'Products' }).click()
  await expect(to.page.getByRole('button', { name: /^Spare detergent/u })).toBeVisible()

  for (const { page, host } of [from, to]) {
    await page.close()
    await host.stop()
  }
})

test('what is here already is compared first, and a person chooses site by site', async ({ browser }) => {
  const { page, host } = await openHost(browser)
  await addDemoSites(page)
  const file = await saveEverything(page)
  for (const [site, racks] of [
    ['Lantern Lane Cafe', '71'],
    ['Millbrook School kitchen', '72'],
  ] as const) {
    await page.getByRole('link', { name: site }).click()
    await page.getByRole('link', { name: 'Set-up', exact: true }).click()
    await page.getByRole('textbox', { name: 'Racks washed' }).fill(racks)
    await page.getByRole('textbox', { name: 'Racks washed' }).blur()
    await expect(page.getByText(/^Saved \d\d:\d\d$/u).first()).toBeVisible()
    await page.getByRole('link', { name: 'Sites', exact: true }).click()
  }
  await bringIn(page, file)
  await expect(dialog(page)).toContainText(/Different here\s*2 sites/u)
  await dialog(page)
    .getByRole('combobox', { name: 'For all that differ' })
    .selectOption('Leave mine as it is')
  await dialog(page)
    .getByRole('combobox', { name: 'Lantern Lane Cafe' })
    .selectOption('Replace mine with the file’s')
  await dialog(page)
    .getByRole('button', { name: /^Bring in/u })
    .click()
  await expect(dialog(page).getByRole('status')).toContainText('1 site changed')
  await page.keyboard.press('Escape')
  await page.getByRole('link', { name: 'Lantern Lane Cafe' }).click()
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  await expect(page.getByRole('textbox', { name: 'Racks washed' })).not.toHaveValue('71')
  await page.getByRole('link', { name: 'Sites', exact: true }).click()
  await page.getByRole('link', { name: 'Millbrook School kitchen' }).click()
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  await expect(page.getByRole('textbox', { name: 'Racks washed' })).toHaveValue('72')
  await page.close()
  await host.stop()
})

test('bringing in many sites can be stopped: what is in stays, the rest is not begun', async ({
  browser,
}) => {
  const { page, host } = await openHost(browser)
  await addDemoSites(page)
  const file = await saveEverything(page)
  const all = sitesOf(file).length
  await page.close()
  await host.stop()

  const other = await openHost(browser)
  let asked = 0
  const hand = new EventEmitter()
  const stopped = once(hand, 'stop')
  await other.page.route('**/rpc/site.import', async (route) => {
    asked += 1
    if (asked > 1) await stopped
    await route.continue()
  })
  await bringIn(other.page, file)
  await dialog(other.page)
    .getByRole('button', { name: /^Bring in/u })
    .click()
  await expect(dialog(other.page).getByRole('progressbar')).toBeVisible()
  await dialog(other.page).getByRole('button', { name: 'Stop' }).click()
  hand.emit('stop')
  await expect(dialog(other.page).getByRole('status')).toContainText('Stopped.')
  expect(asked).toBeLessThan(all)
  await dialog(other.page).getByRole('button', { name: 'Good' }).click()
  await expect.poll(async () => (await names(other.page)).length).toBe(asked)
  await other.page.close()
  await other.host.stop()
})

test('one site of the file that cannot be read is named and stops no other', async ({ browser }) => {
  const { page, host } = await openHost(browser)
  await addDemoSites(page)
  const file = await saveEverything(page)
  const sites = sitesOf(file)
  const [first, second] = sites
  if (first === undefined || second === undefined) throw new Error('too few demo sites')
  first['version'] = 99
  delete second['site']
  const spoilt = Buffer.from(JSON.stringify({ format: 'dosewright-archive', version: 1, sites }))
  await bringIn(page, spoilt)
  await expect(dialog(page)).toContainText(/Cannot be read\s*2 sites/u)
  await expect(dialog(page)).toContainText('written by a newer version')
  await expect(dialog(page)).toContainText('does not hold together at site: it is missing')
  await page.keyboard.press('Escape')
  await bringIn(page, spoilt.subarray(0, 9_000))
  await expect(dialog(page).getByRole('alert')).toContainText('Nothing was brought in')
  await page.close()
  await host.stop()
})

test('settings and removed sites come along, and neither is taken over unless somebody says so', async ({
  browser,
}) => {
  const from = await openHost(browser)
  await addDemoSites(from.page)
  await from.page.getByRole('button', { name: 'Remove Lantern Lane Cafe' }).click()
  await from.page.getByRole('button', { name: 'Remove Copper Spoon Diner' }).click()
  await expect(from.page.getByText('Removed sites (2)')).toBeVisible()
  await from.page.getByRole('link', { name: 'Settings', exact: true }).click()
  await from.page.getByLabel('Your firm', { exact: true }).fill('Clear Water Ltd')
  await from.page.getByLabel('Your firm', { exact: true }).press('Enter')
  await expect(from.page.getByText(/^Saved \d\d:\d\d$/u).first()).toBeVisible()
  await from.page.getByRole('link', { name: 'Sites', exact: true }).click()
  const file = await saveEverything(from.page)
  await expect(from.page.getByText('3 sites, and 2 removed, put into one file.')).toBeVisible()

  const to = await openHost(browser)
  const firm = to.page.getByLabel('Your firm', { exact: true })
  const openSettings = (): Promise<void> =>
    to.page.getByRole('link', { name: 'Settings', exact: true }).click()
  const openSites = (): Promise<void> => to.page.getByRole('link', { name: 'Sites', exact: true }).click()
  const site = (name: string) => to.page.getByRole('main').getByRole('link', { name, exact: true })

  // settings that cannot be read are not counted as a site, and hold nothing else up
  const whole = JSON.parse(file.toString('utf8')) as object
  await bringIn(to.page, Buffer.from(JSON.stringify({ ...whole, settings: { format: 'another' } })))
  await expect(dialog(to.page).getByText('Cannot be read').locator('+ dd')).toHaveText('the settings')
  await expect(dialog(to.page).getByText('Not here yet', { exact: true }).first().locator('+ dd')).toHaveText(
    '3 sites',
  )
  await to.page.keyboard.press('Escape')

  // as it is offered: the sites of the list, and nothing else
  await bringIn(to.page, file)
  await expect(dialog(to.page)).toContainText(/The settings differ in .*your firm/u)
  await expect(dialog(to.page).getByRole('radio', { name: 'mine' })).toBeChecked()
  for (const name of ['Lantern Lane Cafe', 'Copper Spoon Diner'])
    await expect(dialog(to.page).getByRole('combobox', { name })).toHaveValue('keep-mine')
  await dialog(to.page).getByRole('button', { name: 'Bring in 3 sites' }).click()
  await dialog(to.page).getByRole('button', { name: 'Good' }).click()
  await expect(site('Millbrook School kitchen')).toBeVisible()
  await expect(site('Lantern Lane Cafe')).toHaveCount(0)
  await expect(to.page.getByText(/^Removed sites/u)).toHaveCount(0)
  await openSettings()
  await expect(firm).toHaveValue('')
  await openSites()

  // asked for
  await bringIn(to.page, file)
  await dialog(to.page)
    .getByRole('combobox', { name: 'Lantern Lane Cafe' })
    .selectOption('Bring it in as a site')
  await dialog(to.page).getByText('those of the file').click()
  await dialog(to.page).getByRole('button', { name: 'Bring in 4 sites and the settings' }).click()
  await expect(dialog(to.page).getByRole('status')).toContainText('The settings are those of the file')
  await dialog(to.page).getByRole('button', { name: 'Good' }).click()
  await expect(site('Lantern Lane Cafe')).toBeVisible()
  await expect(site('Copper Spoon Diner')).toHaveCount(0)
  await openSettings()
  await expect(firm).toHaveValue('Clear Water Ltd')
  await to.page.getByRole('button', { name: /^Undo: Settings from the file/u }).click()
  await expect(firm).toHaveValue('')

  for (const { page, host } of [from, to]) {
    await page.close()
    await host.stop()
  }
})
