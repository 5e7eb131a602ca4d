import type { Page } from '@playwright/test'
import { addDemoSites, expect, openDemoSite, test } from './support/program'

const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement
    return at === null || at === document.body ? 'nowhere' : (at.getAttribute('aria-label') ?? at.tagName)
  })

test('moving or removing a card by keyboard leaves the keyboard where the card stood', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Lantern Lane Cafe')
  await page.goto(`${page.url()}/setup`)
  const first = page.getByRole('article', { name: /^Pump:/u }).first()
  const name = ((await first.getAttribute('aria-label')) ?? '').replace('Pump: ', '')
  await first.getByRole('button', { name: /down$/u }).focus()
  await page.keyboard.press('Enter')
  // the last card has no way down: the way up stands in its place
  await expect(page.getByRole('button', { name: `Move ${name} up` })).toBeFocused()
  await page.getByRole('button', { name: `Remove ${name}` }).focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('article', { name: `Pump: ${name}` })).toHaveCount(0)
  await expect.poll(() => focused(page)).not.toBe('nowhere')
  const inMachine = page.locator('main article:focus-within, main section:focus-within').first()
  await expect(inMachine).toBeVisible()
})

test('what is added to a list opens in view with the keyboard on it, and removing it leads to its neighbour', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Lantern Lane Cafe')
  await page.goto(`${page.url().split('#')[0] ?? ''}#/products`)
  await page.getByRole('button', { name: 'Delimer: add a product' }).focus()
  await page.keyboard.press('Enter')
  const line = page.getByRole('button', { name: /^New delimer/u })
  await expect(line).toBeFocused()
  await expect(line).toBeInViewport()
  await page.getByRole('button', { name: 'Remove this product' }).focus()
  await page.keyboard.press('Enter')
  await expect(line).toHaveCount(0)
  await expect(page.getByRole('list', { name: 'Products' }).locator(':focus')).toHaveCount(1)
})

test('Enter in the last box of a group takes the entry and keeps the keyboard in it', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Lantern Lane Cafe')
  await page.getByRole('button', { name: 'Start a visit' }).click()
  const counter = page.getByRole('textbox', { name: /^Rack counter/u })
  await counter.fill('70512')
  await counter.press('Enter')
  await expect(page.getByText('racks on the counter')).toBeVisible()
  await expect(counter).toBeFocused()
})

test('the keyboard follows the list of sites: demo sites added, a site removed, brought back, all removed', async ({
  program: page,
}) => {
  await addDemoSites(page)
  const names = page.locator('main li a.name')
  await expect(names.first()).toBeFocused()
  const told = await names.allTextContents()
  const [first = '', second = ''] = told
  for (const by of ['Enter', 'click'] as const) {
    const remove = page.getByRole('button', { name: `Remove ${first}` })
    if (by === 'click') await remove.click()
    else await remove.press('Enter')
    await expect(page.getByRole('link', { name: second, exact: true })).toBeFocused()
    if (by === 'click') await page.getByRole('button', { name: 'Undo', exact: true }).click()
    else {
      await page.getByText('Removed sites (1)').click()
      await page.getByRole('button', { name: 'Bring it back' }).press('Enter')
    }
    await expect(page.getByRole('link', { name: first, exact: true })).toBeFocused()
  }
  for (const name of told) {
    await page.getByRole('button', { name: `Remove ${name}` }).click()
    await expect(page.getByRole('link', { name, exact: true })).toHaveCount(0)
  }
  await expect(page.getByRole('heading', { level: 1, name: 'Sites' })).toBeFocused()
})

test('the keyboard is not taken from a box somebody has begun to type in', async ({ program: page }) => {
  await addDemoSites(page)
  const name = (await page.locator('main li a.name').first().textContent()) ?? ''
  await page.getByRole('button', { name: `Remove ${name}` }).click()
  await page.getByRole('button', { name: 'New site' }).click()
  const box = page.getByRole('textbox', { name: 'Name of the site' })
  await expect(box).toBeFocused()
  await expect(page.getByRole('link', { name, exact: true })).toHaveCount(0)
  await expect(box).toBeFocused()
})
