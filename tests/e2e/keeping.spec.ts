import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { allowWriting, canForbid, forbidWriting } from '../support/forbidding'
import { siteOnDisk, startHost } from './support/host'
import { atRest } from './support/history'
import { expect, openDemoSite, test } from './support/program'

const racks = (page: Page) => page.getByLabel('Racks washed')

async function openSetup(page: Page): Promise<void> {
  await openDemoSite(page, 'Lantern Lane Cafe')
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  await expect(racks(page)).toBeVisible()
}

const saved = (page: Page) => page.getByText(/^Saved \d\d:\d\d$/u).first()

test('what is typed while the program is away is kept, said to be unsaved, and can be taken along as a file', async ({
  browser,
}) => {
  const host = await startHost()
  const page = await browser.newPage()
  await page.goto(await host.address())
  await openSetup(page)
  await host.kill()
  await racks(page).fill('77')
  await racks(page).blur()
  const banner = page.getByRole('alert').filter({ hasText: 'does not answer' })
  await expect(banner).toBeVisible()
  await expect(page.getByText('Not saved', { exact: true })).toBeVisible()
  await expect(racks(page)).toHaveValue('77')

  const download = page.waitForEvent('download')
  await banner.getByRole('button', { name: 'Save a copy of this site as a file' }).click()
  const file = await (await download).path()

  const again = await startHost()
  const fresh = await browser.newPage()
  await fresh.goto(await again.address())
  await fresh.locator('#site-file').setInputFiles(file)
  await fresh.getByRole('link', { name: 'Lantern Lane Cafe' }).click()
  await fresh.getByRole('link', { name: 'Set-up', exact: true }).click()
  await expect(racks(fresh)).toHaveValue('77')
  await page.close({ runBeforeUnload: false })
  await fresh.close()
  await again.stop()
})

test('a failed save shows why, is tried again, and nothing of it is lost', async ({ program: page }) => {
  await openSetup(page)
  let refuse = true
  await page.route('**/rpc/site.edit', async (route) => {
    if (!refuse) return route.continue()
    await route.fulfill({ json: { ok: false, problem: { code: 'not-saved', reason: 'the disk is full' } } })
  })
  await racks(page).fill('78')
  await racks(page).blur()
  await expect(page.getByRole('alert').filter({ hasText: 'the disk is full' })).toBeVisible()
  await expect(page).toHaveTitle(/^• /u)
  refuse = false
  await page.getByRole('button', { name: 'Try again now' }).click()
  await expect(saved(page)).toBeVisible()
  await expect(page.getByRole('alert').filter({ hasText: 'the disk is full' })).toHaveCount(0)
  await page.reload()
  await expect(racks(page)).toHaveValue('78')
})

if (canForbid)
  test('while nothing can be written, every screen says why; all of it is saved by itself afterwards, also after a reload', async ({
    program: page,
    host,
  }) => {
    await openSetup(page)
    const home = page.url().split('#')[0] ?? ''
    const why = 'the data folder cannot be written by this user'
    const folders = ['sites', 'library', 'removed'].map((name) => join(host.dataFolder, name))
    const banner = page.locator('.banners')
    for (const folder of folders) forbidWriting(folder)
    try {
      await racks(page).fill('81')
      await racks(page).blur()
      await expect(banner).toContainText(why)
      await page.goto(`${home}#/settings`)
      await expect(banner).toContainText(why)
      await page.getByLabel('Your name', { exact: true }).fill('A. Rep')
      await page.keyboard.press('Tab')
      await page.goto(`${home}#/`)
      await page.getByRole('button', { name: 'New site' }).click()
      await page.getByRole('textbox', { name: 'Name of the site' }).fill('Harbour Kitchen')
      await page.keyboard.press('Enter')
      // behind the dialog nobody would see it
      await expect(page.getByRole('dialog').getByRole('alert')).toContainText(why)
      await expect(page.getByRole('textbox', { name: 'Name of the site' })).toHaveValue('Harbour Kitchen')
      await page.keyboard.press('Escape')
      // the list of sites shows neither the site nor the settings, and yet nothing of them is left behind
      await atRest(page)
      page.once('dialog', (leave) => void leave.accept())
      await page.reload()
      await expect(banner).toContainText(why)
    } finally {
      for (const folder of folders) allowWriting(folder)
    }
    await expect(saved(page)).toBeVisible()
    await expect(banner).not.toContainText(why)
    await page.goto(`${home}#/settings`)
    await expect(page.getByLabel('Your name', { exact: true })).toHaveValue('A. Rep')
    await page.goto(`${home}#/`)
    await page.getByRole('link', { name: 'Lantern Lane Cafe' }).click()
    await page.getByRole('link', { name: 'Set-up', exact: true }).click()
    await expect(racks(page)).toHaveValue('81')
  })

test('a reload in the middle of typing keeps what was typed', async ({ program: page }) => {
  await openSetup(page)
  await racks(page).fill('79')
  await page.reload()
  await expect(racks(page)).toHaveValue('79')
})

test('two windows on one site: different places are joined, the same place is asked about', async ({
  program: page,
  host,
  context,
}) => {
  await openSetup(page)
  const kept = () => siteOnDisk(host.dataFolder, 'Lantern Lane Cafe')
  const other = await context.newPage()
  await other.goto(await host.address())
  await other.getByRole('link', { name: 'Lantern Lane Cafe' }).click()
  await other.getByRole('link', { name: 'Set-up', exact: true }).click()

  await other.getByLabel('Visit every').fill('21')
  await other.getByLabel('Visit every').blur()
  await expect(saved(other)).toBeVisible()
  await expect.poll(() => kept().visitEveryDays).toBe('21')
  await racks(page).fill('81')
  await racks(page).blur()
  await expect(page.getByLabel('Visit every')).toHaveValue('21')
  await expect(saved(page)).toBeVisible()
  await expect.poll(() => kept().machines[0]?.racksPerDay).toBe('81')

  await other.getByLabel('Open').fill('5')
  await other.getByLabel('Open').blur()
  await expect(racks(other)).toHaveValue('81')
  await expect.poll(() => kept().calendar.daysPerWeek).toBe('5')
  await page.getByLabel('Open').fill('3')
  await page.getByLabel('Open').blur()
  const asked = page.getByRole('alert').filter({ hasText: 'also changed in another window' })
  await expect(asked).toBeVisible()
  await asked.getByRole('button', { name: 'Take what the other window has' }).click()
  await expect(page.getByLabel('Open')).toHaveValue('5')
  await expect(asked).toHaveCount(0)
  await other.close()
})

test('the theme, the decimal sign and the units follow the settings at once', async ({ program: page }) => {
  await page.getByRole('link', { name: 'Settings' }).click()
  const ground = (): Promise<string> => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
  await page.getByLabel('light', { exact: true }).check()
  const light = await ground()
  await page.getByLabel('dark', { exact: true }).check()
  expect(await ground()).not.toBe(light)
  await page.getByLabel('comma: 1,5').check()
  await page.getByRole('link', { name: 'Instruments' }).click()
  await page.getByRole('button', { name: '25 mL, class A: add this cylinder' }).click()
  await expect(page.getByRole('textbox', { name: 'May be off by ±' })).toHaveValue('0,17')
  await page.reload()
  await expect(page.getByRole('button', { name: /^25 mL cylinder, class A/u })).toContainText('± 0,17 mL')
})
