import type { Page } from '@playwright/test'
import { atRest } from './support/history'
import { expect, openDemoSite, test } from './support/program'

/** Opens a dialog over a site's spend, and gives the addresses of the site and of the screen under the dialog. */
async function openDeliveries(page: Page): Promise<{ readonly site: string; readonly spend: string }> {
  await openDemoSite(page, 'Lantern Lane Cafe')
  const site = page.url()
  await page.getByRole('link', { name: 'Spend', exact: true }).click()
  await page.getByRole('button', { name: 'Stock and orders' }).click()
  const spend = page.url()
  await page.getByRole('button', { name: 'Read in deliveries' }).click()
  await expect(page.getByRole('dialog')).toBeVisible()
  await atRest(page)
  return { site, spend }
}

test('Back closes the dialog it finds open, keeps what was entered before it, and only then leaves the screen', async ({
  program: page,
}) => {
  const { site, spend } = await openDeliveries(page)
  await page.goBack()
  await expect(page.getByRole('dialog')).toHaveCount(0)
  expect(page.url()).toBe(spend)
  await expect(page.getByRole('button', { name: 'Read in deliveries' })).toBeFocused()
  await page.goForward()
  await expect(page.getByRole('dialog')).toHaveCount(0)
  expect(page.url()).toBe(spend)
  await page.getByRole('button', { name: 'Help' }).click()
  await expect(page.getByRole('dialog')).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toHaveCount(0)
  await atRest(page)
  await page.goBack()
  await expect(page).toHaveURL(site)
})

test('Back after a site was made in a dialog leads to the list, with no dialog on it', async ({
  program: page,
}) => {
  await page.getByRole('button', { name: 'Add your first site' }).click()
  await page.getByRole('textbox', { name: 'Name of the site' }).fill('Harbour Kitchen')
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/setup$/u)
  await atRest(page)
  await page.goBack()
  await expect(page.getByRole('link', { name: 'Harbour Kitchen' })).toBeVisible()
  await expect(page.getByRole('dialog')).toHaveCount(0)
  await page.goForward()
  await expect(page).toHaveURL(/setup$/u)
})

test('a step back that a busy machine takes late closes no dialog that opened meanwhile, and is not taken twice', async ({
  program: page,
}) => {
  const { spend } = await openDeliveries(page)
  await page.evaluate(() => {
    const w = window as unknown as { step: () => void; asked: number }
    const go = history.go.bind(history)
    w.asked = 0
    history.go = (steps) => {
      w.asked += 1
      w.step = () => go(steps)
    }
  })
  await page.keyboard.press('Escape')
  await expect.poll(() => page.evaluate(() => (window as unknown as { asked: number }).asked)).toBe(1)
  // longer than a link waits for the step
  await page.waitForTimeout(2_500)
  await page.getByRole('button', { name: 'Help' }).click()
  const help = page.getByRole('dialog')
  await expect(help).toBeVisible()
  await page.evaluate(() => (window as unknown as { step: () => void }).step())
  await atRest(page)
  await expect(help).toBeVisible()
  expect(await page.evaluate(() => (window as unknown as { asked: number }).asked)).toBe(1)
  await page.goBack()
  await expect(page.getByRole('dialog')).toHaveCount(0)
  expect(page.url()).toBe(spend)
})
