import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { openDemoSite, expect, test } from './support/program'

const RULES = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']

const accessible = async (page: Page): Promise<void> => {
  const found = await new AxeBuilder({ page }).withTags(RULES).include('main').analyze()
  expect(found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`)).toEqual([])
}

/** The last closed visit of a demo site, on the bench of one pump. */
async function lastVisit(page: Page, site: string, pump: RegExp): Promise<void> {
  await openDemoSite(page, site)
  const report = await page.locator('a[href*="/visit/"]').first().getAttribute('href')
  await page.goto(`${page.url().split('#')[0] ?? ''}${(report ?? '').replace(/\/report$/u, '')}`)
  await page.getByRole('button', { name: pump }).click()
}

test('the two tanks of a conveyor show their strength over the service, with their charges and waits', async ({
  program: page,
}) => {
  await lastVisit(page, 'Quayside Banqueting', /conveyor detergent/iu)
  await page.getByText('The wash over the service').click()
  const card = page.getByRole('region', { name: 'Second tank' })
  await expect(
    card.getByRole('img', { name: /The wash tank, fed by what comes over, starts at 0/u }),
  ).toBeVisible()
  await expect(card.getByRole('heading', { name: 'Wash tank' })).toBeVisible()
  // 3 x 85 L / 2.65 L and 3 x (85 + 45) L / 2.65 L, rounded up
  await expect(card.getByText(/Wash 97 racks/u)).toBeVisible()
  await expect(card.getByText(/Wash 148 racks/u)).toBeVisible()
  await card.getByRole('button', { name: 'Working of by hand, after a fill' }).click()
  // 2.05 g/L in 45 L
  await expect(card.getByText(/v = 2\.05 × 45 \//u)).toBeVisible()
  await card
    .getByText(/figures of the chart|as a table|table/iu)
    .first()
    .click()
  await expect(card.getByRole('columnheader', { name: 'Wash tank, g/L' })).toBeVisible()
  await accessible(page)
})

test('a second tank is entered in the set-up, chosen under the pump, and taken away again', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Quayside Banqueting')
  await page.goto(`${page.url()}/setup`)
  const there = page.getByRole('checkbox', { name: 'A second tank overflows into the wash tank' })
  await expect(there).toBeChecked()
  const volume = page.getByLabel(/^Second tank holds/u)
  await volume.fill('90')
  await volume.press('Enter')
  await there.click()
  await expect(volume).toBeHidden()
  await expect(page.getByRole('radio', { name: 'the second tank' })).toHaveCount(0)
  await page.keyboard.press('Control+z')
  await expect(there).toBeChecked()
  await expect(volume).toHaveValue('90')
  await accessible(page)
})

test('the bench says how many racks a change of a rinse dose takes through the booster', async ({
  program: page,
}) => {
  await lastVisit(page, 'Quayside Banqueting', /conveyor rinse aid/iu)
  await page.getByText('How soon a change reaches the glasses').click()
  const card = page.getByRole('region', { name: 'Booster' })
  // 3 x 14 L / 2.65 L, rounded up
  await expect(card.getByText(/wash 16 racks/u)).toBeVisible()
  await card.getByRole('button', { name: 'Working of the racks to wait' }).click()
  await expect(card.getByText('n = 3 × 14 / 2.65')).toBeVisible()
  await accessible(page)
})
