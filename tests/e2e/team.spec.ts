import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from '@playwright/test'
import { dropFolder, siteOnDisk, startHost, type RunningHost } from './support/host'
import { addDemoSites, expect, test, watched } from './support/program'

interface Rep {
  readonly page: Page
  readonly host: RunningHost
}

/** One rep's computer: a host on a data folder of its own, with the team's folder. */
async function rep(browser: Browser, root: string, name: string): Promise<Rep> {
  const host = await startHost(join(root, name), ['--shared', join(root, 'shared')])
  const page = await (await browser.newContext()).newPage()
  const wrongs = await watched(page, host.origin)
  page.on('close', () => expect(wrongs).toEqual([]))
  page.setDefaultTimeout(30_000)
  await page.goto(await host.address())
  return { page, host }
}

const inbox = (page: Page) => page.getByRole('region', { name: 'In the team’s folder' })
const racks = (page: Page) => page.getByRole('textbox', { name: 'Racks washed' })
/** What a person does who comes back to the window. */
const comeBack = (page: Page): Promise<void> =>
  page.evaluate(() => void window.dispatchEvent(new Event('focus')))

/** The site as it lies on the disk of a rep. */
const siteOf = ({ host }: Rep) => siteOnDisk(host.dataFolder, 'Lantern Lane Cafe')

async function setUp(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Sites', exact: true }).click()
  await page.getByRole('link', { name: 'Lantern Lane Cafe' }).click()
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  await expect(racks(page)).toBeVisible()
}

async function enterRacks(page: Page, value: string): Promise<void> {
  await setUp(page)
  await racks(page).fill(value)
  await racks(page).blur()
  await expect(page.getByText(/^Saved \d\d:\d\d$/u).first()).toBeVisible()
}

async function startVisit(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Sites', exact: true }).click()
  await page.getByRole('link', { name: 'Lantern Lane Cafe' }).click()
  await page.getByRole('button', { name: 'Start a visit' }).click()
  await page.getByRole('radio', { name: 'In order', exact: true }).first().check()
  await expect(page.getByText(/^Saved \d\d:\d\d$/u).first()).toBeVisible()
}

async function publish(page: Page): Promise<void> {
  await setUp(page)
  await page.getByRole('button', { name: 'Put my copy into the team’s folder' }).click()
  await expect(page.getByText(/^Your copy of Lantern Lane Cafe lies in the team’s folder/u)).toBeVisible()
}

test('two reps with one site and a shared folder each take in the other’s visit and end with both', async ({
  browser,
}) => {
  const root = mkdtempSync(join(tmpdir(), 'dosewright-team-'))
  mkdirSync(join(root, 'shared'))
  const anna = await rep(browser, root, 'anna')
  const ben = await rep(browser, root, 'ben')
  await addDemoSites(anna.page)
  await publish(anna.page)

  // it came in while Ben looked at his empty list
  await comeBack(ben.page)
  await expect(inbox(ben.page)).toContainText('Lantern Lane Cafe is not here yet')
  await inbox(ben.page).getByRole('button', { name: 'Bring in Lantern Lane Cafe' }).click()
  await expect(ben.page.getByRole('link', { name: 'Lantern Lane Cafe' })).toBeVisible()
  await expect(inbox(ben.page)).toHaveCount(0)

  await startVisit(anna.page)
  await startVisit(ben.page)
  await publish(anna.page)
  await publish(ben.page)
  for (const { page } of [anna, ben]) {
    await page.getByRole('link', { name: 'Sites', exact: true }).click()
    await expect(inbox(page)).toContainText('Lantern Lane Cafe has something new')
    await inbox(page).getByRole('button', { name: 'Compare and bring in Lantern Lane Cafe' }).click()
    const dialog = page.getByRole('dialog')
    await dialog.getByText(/^Where they differ/u).click()
    await expect(dialog.getByText(/^Open visit .*: only here$/u)).toBeVisible()
    await expect(dialog.getByText(/^Open visit .*: only in the file$/u)).toBeVisible()
    await dialog.getByRole('button', { name: /^Bring both together/u }).click()
    await expect(page.getByText(/^Brought in Lantern Lane Cafe/u)).toBeVisible()
  }
  expect(siteOf(anna)).toEqual(siteOf(ben))
  expect(siteOf(anna).visits.length).toBeGreaterThan(2)

  // both change the set-up: a person is asked, and what gives way can be had back
  await enterRacks(anna.page, '71')
  await enterRacks(ben.page, '72')
  await publish(ben.page)
  await anna.page.getByRole('link', { name: 'Sites', exact: true }).click()
  await inbox(anna.page)
    .getByRole('button', { name: /^Compare and bring in/u })
    .click()
  const asked = anna.page.getByRole('dialog')
  await asked.getByRole('radio', { name: 'what the file says' }).check()
  await asked.getByRole('button', { name: /^Bring both together/u }).click()
  await setUp(anna.page)
  await expect(racks(anna.page)).toHaveValue('72')
  await anna.page.getByText('Earlier versions of this site').click()
  await anna.page
    .getByRole('button', { name: /^See what going back to/u })
    .first()
    .click()
  await anna.page.getByRole('button', { name: 'Go back to this version' }).click()
  await expect(racks(anna.page)).toHaveValue('71')

  // left as it is: an answer, too, and not asked again
  await enterRacks(ben.page, '73')
  await publish(ben.page)
  await anna.page.getByRole('link', { name: 'Sites', exact: true }).click()
  await inbox(anna.page)
    .getByRole('button', { name: /^Compare and bring in/u })
    .click()
  await anna.page.getByRole('dialog').getByRole('button', { name: 'Leave mine as it is' }).click()
  await expect(inbox(anna.page)).toHaveCount(0)
  await comeBack(anna.page)
  await expect(anna.page.getByText('Left Lantern Lane Cafe as it is.')).toBeVisible()
  await expect(inbox(anna.page)).toHaveCount(0)

  // a file cut short by the sync service is named and stops nothing
  const cut = '99999999-0000-4000-8000-000000000000--88888888-0000-4000-8000-000000000000.dosewright.json'
  writeFileSync(join(root, 'shared', cut), '{"format": "dosewr')
  await comeBack(ben.page)
  await ben.page.getByRole('link', { name: 'Sites', exact: true }).click()
  await expect(inbox(ben.page)).toContainText('cannot be read')
  await expect(ben.page.getByRole('link', { name: 'Lantern Lane Cafe' })).toBeVisible()

  for (const { page, host } of [anna, ben]) {
    await page.close()
    await host.stop()
  }
  dropFolder(root)
})

test('a site one rep removed does not come back by itself: it is offered as removed, and what it held here comes with it', async ({
  browser,
}) => {
  const root = mkdtempSync(join(tmpdir(), 'dosewright-team-'))
  mkdirSync(join(root, 'shared'))
  const anna = await rep(browser, root, 'anna')
  const ben = await rep(browser, root, 'ben')
  await addDemoSites(anna.page)
  await publish(anna.page)
  await comeBack(ben.page)
  await inbox(ben.page).getByRole('button', { name: 'Bring in Lantern Lane Cafe' }).click()
  await enterRacks(ben.page, '88')
  await ben.page.getByRole('link', { name: 'Sites', exact: true }).click()
  await ben.page.getByRole('button', { name: 'Remove Lantern Lane Cafe' }).click()
  await expect(ben.page.getByRole('link', { name: 'Lantern Lane Cafe' })).toHaveCount(0)

  await enterRacks(anna.page, '61')
  await publish(anna.page)
  await comeBack(ben.page)
  await expect(inbox(ben.page)).toContainText('Lantern Lane Cafe was removed here, a colleague still has it')
  await expect(ben.page.getByRole('link', { name: 'Lantern Lane Cafe' })).toHaveCount(0)
  await inbox(ben.page).getByRole('button', { name: 'Leave it removed: Lantern Lane Cafe' }).click()
  await expect(inbox(ben.page)).toHaveCount(0)

  await enterRacks(anna.page, '62')
  await publish(anna.page)
  await comeBack(ben.page)
  await inbox(ben.page).getByRole('button', { name: 'Bring back and compare Lantern Lane Cafe' }).click()
  await ben.page
    .getByRole('dialog')
    .getByRole('button', { name: /^Bring both together/u })
    .click()
  await setUp(ben.page)
  await expect(racks(ben.page)).toHaveValue('88')
  for (const { page, host } of [anna, ben]) {
    await page.close()
    await host.stop()
  }
  dropFolder(root)
})
