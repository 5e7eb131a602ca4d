import { readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { siteOnDisk, startHost } from './support/host'
import { expect, openDemoSite, test } from './support/program'

/** Makes a site with one machine and fills it in, with the keyboard alone. Returns the keys beyond the entries' own. */
async function setUpByKeyboard(page: Page): Promise<number> {
  let keys = 0
  const press = async (...names: readonly string[]): Promise<void> => {
    for (const name of names) {
      await page.keyboard.press(name)
      keys += 1
    }
  }
  const type = (text: string): Promise<void> => page.keyboard.type(text)
  const tabTo = async (name: RegExp): Promise<void> => {
    for (let step = 0; step < 60; step += 1) {
      await press('Tab')
      const label = await page.evaluate(() => {
        const here = document.activeElement
        const labelled = here instanceof HTMLInputElement || here instanceof HTMLSelectElement
        const labels = labelled ? [...(here.labels ?? [])].map((one) => one.textContent) : [here?.textContent]
        return labels.join(' ').replaceAll(/\s+/gu, ' ').trim()
      })
      if (name.test(label)) return
    }
    throw new Error(`no way by Tab to ${String(name)}`)
  }

  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Sites')
  await tabTo(/^Add your first site$/u)
  await press('Enter')
  await type('Old Mill Brewpub')
  await press('Enter')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Set-up of Old Mill Brewpub')
  await tabTo(/^Undercounter machine$/u)
  await press('Enter')
  await tabTo(/^Racks washed/u)
  await type('130')
  await tabTo(/^Fresh water per rack/u)
  await type('6.435')
  await tabTo(/^Product/u)
  await press('End')
  await expect(page.getByLabel('Name of the new product')).toBeVisible()
  await tabTo(/^Name of the new product/u)
  await type('Bar rinse aid')
  await press('Enter', 'Enter')
  await tabTo(/^Runs for one rack/u)
  await type('12')
  await tabTo(/^Target/u)
  await type('280')
  await press('Enter')
  return keys
}

test('a new site with a machine and its pumps is set up by keyboard, kept, and there after a restart', async ({
  browser,
}) => {
  const first = await startHost()
  const page = await browser.newPage()
  await page.goto(await first.address())
  const keys = await setUpByKeyboard(page)
  const limits = page.getByRole('article', { name: 'Pump: Rinse aid' })
  await expect(limits.getByLabel('Low limit')).toHaveValue('252')
  await expect(limits.getByLabel('High limit')).toHaveValue('308')
  await expect(page.getByText(/^Saved \d\d:\d\d$/u).first()).toBeVisible()
  console.log(`set-up of one pump by keyboard: ${keys} keys beyond what was entered`)
  await first.stop()

  const second = await startHost(first.dataFolder)
  await page.goto(await second.address())
  await page.getByRole('link', { name: 'Old Mill Brewpub' }).click()
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  await expect(page.getByLabel('Racks washed')).toHaveValue('130')
  await expect(limits.getByRole('textbox', { name: 'Runs for one rack' })).toHaveValue('12')
  await expect(limits.getByRole('combobox', { name: 'Product' })).toHaveText(/Bar rinse aid/u)
  await page.close()
  await second.stop()
})

test('every entry of the set-up can be taken back and done again, also the ones joined with a new product', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Lantern Lane Cafe')
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  const racks = page.getByLabel('Racks washed')
  const before = await racks.inputValue()
  await racks.fill('61')
  await racks.blur()
  await racks.fill('62')
  await racks.blur()
  await page.keyboard.press('Control+z')
  await expect(racks).toHaveValue('61')
  await page.keyboard.press('Control+z')
  await expect(racks).toHaveValue(before)
  await page.keyboard.press('Control+Shift+z')
  await expect(racks).toHaveValue('61')
  await page.keyboard.press('Control+y')
  await expect(racks).toHaveValue('62')

  await racks.focus()
  await racks.press('End')
  await page.keyboard.type('5')
  await page.keyboard.press('Control+z')
  await expect(racks).toHaveValue('62')
  await racks.blur()

  const pump = page.getByRole('article').first()
  const name = await pump.getByRole('heading').first().innerText()
  await pump.getByRole('button', { name: /^Remove/u }).click()
  await expect(page.getByRole('heading', { name, exact: true })).toHaveCount(0)
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByRole('heading', { name, exact: true })).toHaveCount(1)
})

test('a site is removed and brought back, and its file travels', async ({ program: page }) => {
  await openDemoSite(page, 'Copper Spoon Diner')
  await page.getByRole('link', { name: 'Dosewright, all sites' }).click()
  const row = page.getByRole('listitem').filter({ hasText: 'Copper Spoon Diner' })

  const download = page.waitForEvent('download')
  await row.getByRole('button', { name: /as a file$/u }).click()
  const file = await (await download).path()
  expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ format: 'dosewright-site', version: 2 })

  await row.getByRole('button', { name: /^Remove/u }).click()
  await expect(page.getByRole('link', { name: 'Copper Spoon Diner' })).toHaveCount(0)
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByRole('link', { name: 'Copper Spoon Diner' })).toHaveCount(1)

  await page.locator('#site-file').setInputFiles(file)
  await expect(page.getByRole('dialog')).toContainText('There is nothing to bring in.')
  await page.getByRole('button', { name: 'Good' }).click()

  const changed = readFileSync(file, 'utf8').replace('Copper Spoon Diner', 'Copper Spoon')
  await page
    .locator('#site-file')
    .setInputFiles({ name: 'spoon.json', mimeType: 'application/json', buffer: Buffer.from(changed) })
  // on a phone the cross stays beside a title of two lines
  await page.setViewportSize({ width: 320, height: 740 })
  const title = await page.getByRole('dialog').getByRole('heading', { level: 2 }).boundingBox()
  const cross = await page.getByRole('dialog').getByRole('button', { name: 'Close' }).boundingBox()
  expect(cross?.y ?? 999).toBeLessThan((title?.y ?? 0) + (title?.height ?? 0))
  await page.getByRole('button', { name: 'Keep both, as two sites' }).click()
  await expect(page.getByRole('link', { name: /^Copper Spoon/u })).toHaveCount(2)

  await page.locator('#site-file').setInputFiles({
    name: 'letter.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"dear":"sir"}'),
  })
  await expect(page.getByRole('alert').filter({ hasText: 'letter.json' })).toContainText(
    'not a file of the kind',
  )
})

test('a damaged site is shown with what happened, and its last good version comes back', async ({
  browser,
}) => {
  const first = await startHost()
  const page = await browser.newPage()
  await page.goto(await first.address())
  await openDemoSite(page, 'Millbrook School kitchen')
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  for (const racks of ['150', '151']) {
    await page.getByLabel('Racks washed').fill(racks)
    await page.getByLabel('Racks washed').blur()
    await expect(page.getByText(/^Saved \d\d:\d\d$/u).first()).toBeVisible()
    await expect
      .poll(() => siteOnDisk(first.dataFolder, 'Millbrook School kitchen').machines[0]?.racksPerDay)
      .toBe(racks)
  }
  const id = /site\/([\w-]+)/u.exec(page.url())?.[1] ?? ''
  await first.stop()

  const folder = join(first.dataFolder, 'sites')
  const name = readdirSync(folder).find((entry) => entry.startsWith(id) && entry.endsWith('.json')) ?? ''
  writeFileSync(join(folder, name), '{ "format": "dosewright-si')

  const second = await startHost(first.dataFolder)
  await page.goto(await second.address())
  await expect(page.getByText('Millbrook School kitchen cannot be read:')).toBeVisible()
  await expect(page.getByRole('link', { name: 'Lantern Lane Cafe' })).toBeVisible()
  await page.getByRole('button', { name: /^Bring back the version/u }).click()
  await page.getByRole('link', { name: 'Millbrook School kitchen' }).click()
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  await expect(page.getByLabel('Racks washed')).toHaveValue('151')
  await page.close()
  await second.stop()
})

test('a page opened by hand says to open it from the program', async ({ page, host }) => {
  await page.goto(host.origin)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Open Dosewright from the program')
})

test('an order of machines set by hand stays when a file brings another machine', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Quayside Banqueting')
  const site = page.url()
  const cards = page.getByRole('region', { name: /^Machine: / })
  const names = (): Promise<readonly string[]> => cards.locator(':scope > header h3').allTextContents()
  await page.getByRole('link', { name: 'Dosewright, all sites' }).click()
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save Quayside Banqueting as a file' }).click()
  const file = JSON.parse(readFileSync(await (await download).path(), 'utf8')) as {
    readonly site: { readonly machines: readonly { readonly id: string; readonly name: string }[] }
  }
  const { machines } = file.site
  const [first, second] = machines.map(({ name }) => name.trim())
  expect(machines).toHaveLength(2)

  await page.goto(`${site}/setup`)
  await cards
    .first()
    .getByRole('button', { name: /^Move .* down$/u })
    .first()
    .click()
  await expect.poll(names).toEqual([second, first])
  await page.getByRole('link', { name: 'Dosewright, all sites' }).click()

  // what another window, later, would have made of the same site
  const id = '00000000-0000-4000-8000-000000000001'
  const third = { ...machines[0], id, name: 'Glass washer', pumps: [] }
  const added = {
    movedAt: null,
    ids: machines.map((one) => one.id),
    added: [{ id, at: '2099-01-01T08:00:00.000Z' }],
  }
  const theirs = { ...file, site: { ...file.site, machines: [...machines, third], machineOrder: added } }
  await page.locator('#site-file').setInputFiles({
    name: 'quayside.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(theirs)),
  })
  await page.getByRole('button', { name: /^Bring both together/u }).click()
  await expect(page.getByText('Brought in Quayside Banqueting.')).toBeVisible()
  await page.goto(`${site}/setup`)
  await expect.poll(names).toEqual([second, first, 'Glass washer'])
})
