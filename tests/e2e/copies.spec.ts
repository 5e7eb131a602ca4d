import { readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { startHost } from './support/host'
import { addDemoSites, expect, openDemoSite, test } from './support/program'

test('a damaged list of products stops nothing for good: its last good version comes back', async ({
  browser,
}) => {
  const first = await startHost()
  const page = await browser.newPage()
  await page.goto(await first.address())
  await addDemoSites(page)
  await page.getByRole('link', { name: 'Products' }).click()
  await page.getByRole('button', { name: /^Chlorine sanitizer/u }).click()
  await page.getByRole('textbox', { name: 'Keeps for' }).fill('55')
  await page.getByRole('textbox', { name: 'Keeps for' }).blur()
  await expect(page.getByText(/^Saved \d\d:\d\d$/u).first()).toBeVisible()
  await first.stop()
  writeFileSync(join(first.dataFolder, 'library', 'products.json'), '{"format":"dosewri')

  const second = await startHost(first.dataFolder)
  await page.goto(await second.address())
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Dosewright could not open its records')
  await page.getByRole('button', { name: 'Bring back the last good version of the products' }).click()
  await page.getByRole('link', { name: 'Products' }).click()
  await page.getByRole('button', { name: /^Chlorine sanitizer/u }).click()
  await expect(page.getByRole('textbox', { name: 'Keeps for' })).toHaveValue('55')
  expect(readdirSync(first.dataFolder, { recursive: true }).join(' ')).toMatch(/damaged/iu)
  await page.close()
  await second.stop()
})

test('the wording of a caution is replaced and brought back', async ({ program: page }) => {
  await page.getByRole('link', { name: 'Settings' }).click()
  await page.getByText(/^Change the wording/u).click()
  const scald = page.getByRole('textbox', { name: /scald|hot/iu }).first()
  const shipped = await scald.inputValue()
  await scald.fill('Heißes Wasser verbrüht.')
  await scald.blur()
  await expect(page.getByText('Change the wording (1 changed)')).toBeVisible()
  await scald.fill('')
  await scald.blur()
  await expect(scald).toHaveValue(shipped)
  await expect(page.getByText('Change the wording (0 changed)')).toBeVisible()
})

test('going back to a daily copy shows first what it would change, and can itself be taken back', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Millbrook School kitchen')
  await page.getByRole('link', { name: 'Set-up', exact: true }).click()
  const racks = page.getByRole('textbox', { name: 'Racks washed' })
  const before = await racks.inputValue()
  await racks.fill('999')
  await racks.blur()
  await expect(page.getByText(/^Saved \d\d:\d\d$/u).first()).toBeVisible()
  await page.getByText('Earlier versions of this site').click()
  await page
    .getByRole('button', { name: /^See what going back to/u })
    .first()
    .click()
  await expect(page.getByText(/^Machine “.+”: differs in .*racks/u)).toBeVisible()
  await page.getByRole('button', { name: 'Go back to this version' }).click()
  await expect(racks).toHaveValue(before)
  await page
    .getByRole('button', { name: /^See what going back to/u })
    .first()
    .click()
  await page.getByRole('button', { name: 'Go back to this version' }).click()
  await expect(racks).toHaveValue('999')
})
