import { openAt } from './support/history'
import { expect, openDemoSite, test } from './support/program'

test('what cannot be done yet says why, and a typed number is shown with the sign that was chosen', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Quayside Banqueting')
  const site = new URL(page.url()).hash
  const open = (hash: string): Promise<void> => openAt(page, hash)
  await open(`${site}/trend`)
  await expect(page.getByRole('button', { name: 'All days' })).toBeDisabled()
  await expect(page.getByText(/^All days are shown: /u)).toBeVisible()
  await page.getByRole('button', { name: 'Closer' }).click()
  await expect(page.getByText(/^All days are shown: /u)).toHaveCount(0)

  await open(`${site}/setup`)
  await page
    .getByRole('combobox', { name: 'Product' })
    .first()
    .selectOption({ label: 'A product that is not listed…' })
  await page.getByRole('button', { name: 'Add it to the products' }).click()
  await expect(page.getByText('The name is empty. Enter what its label calls it.')).toBeVisible()

  await open('#/products')
  await page.getByRole('button', { name: /^Dish detergent, 20 L/u }).click()
  // with text of twice the size the fields of a price go under one another instead of out of their card
  await page.setViewportSize({ width: 820, height: 1180 })
  const size = (percent: string): Promise<void> =>
    page.evaluate((to) => {
      document.documentElement.style.setProperty('font-size', to)
    }, percent)
  await size('200%')
  const past = await page.evaluate(
    () =>
      [...document.querySelectorAll('main input, main select')].filter(
        (box) => box.getBoundingClientRect().right > document.documentElement.clientWidth,
      ).length,
  )
  expect(past).toBe(0)
  await size('100%')
  // the same range as everything that counts with it, or a figure would be missing without a word here
  const density = page.getByRole('textbox', { name: /^Density/u })
  const before = await density.inputValue()
  await density.fill('1.8')
  await density.press('Enter')
  await expect(page.getByText(/between 0\.8 and 1\.6/u)).toBeVisible()
  await density.fill(before)
  await density.press('Enter')
  await expect(page.getByText(/between 0\.8 and 1\.6/u)).toHaveCount(0)
  await page.getByRole('button', { name: 'Add a price' }).click()
  await page.getByRole('textbox', { name: /^New price of a container/u }).fill('')
  await page.getByRole('button', { name: 'Add this price' }).click()
  await expect(page.getByText('The price is empty. Enter what a full container costs.')).toBeVisible()

  await open('#/settings')
  await page.getByRole('radio', { name: /^comma/iu }).check({ force: true })
  await open(site)
  const water = page.getByRole('region', { name: 'Water supply' })
  await expect(water).toContainText('7,6')
  await expect(water).not.toContainText('7.6')
})
