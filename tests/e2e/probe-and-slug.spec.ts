import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { openDemoSite, expect, test } from './support/program'
import { benchOf, countedRun, Hands, quickTime } from './visit-hands'

const RULES = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']

const accessible = async (page: Page): Promise<void> => {
  const found = await new AxeBuilder({ page }).withTags(RULES).include('main').analyze()
  expect(found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`)).toEqual([])
}

/** Opens the set-up of the site shown, and what is folded away there. */
async function setUp(page: Page): Promise<void> {
  await page.goto(`${page.url().replace(/\/(?:setup|visit\/.*)$/u, '')}/setup`)
  const folds = page.getByText(/^More about this (?:machine|pump)/u)
  await folds.first().waitFor()
  for (const fold of await folds.all()) await fold.click()
}

test('a dose that goes in all at once: entered in the set-up, it shows its swing on the bench and the report', async ({
  program: page,
}) => {
  await quickTime(page)
  await openDemoSite(page, 'Millbrook School kitchen')
  await page.getByRole('button', { name: /start a visit/iu }).click()
  await benchOf(page, /detergent pump/iu)
  const visit = page.url()
  await page.getByRole('textbox', { name: /^Level before/u }).fill('250')
  await page.keyboard.press('Enter')
  await countedRun(new Hands(page, 'keys'), '109')
  const card = page.getByRole('region', { name: 'Wash tank' })
  await page.getByText('The wash over the service').click()
  await expect(card.getByText('Settles at')).toBeVisible()
  await expect(card.getByText(/all at once/u)).toHaveCount(0)

  await setUp(page)
  await page.getByLabel('A dose goes into the tank').selectOption({ label: 'all at once, after the rinse' })
  await accessible(page)
  await page.goto(visit)
  await page.getByText('The wash over the service').click()
  const swing = card.getByText(/^The dose goes in all at once/u)
  await expect(swing).toBeVisible()
  const [, trough = '', peak = ''] =
    /between ([\d.]+) and ([\d.]+) g\/L/u.exec((await swing.textContent()) ?? '') ?? []
  // peak over trough is exp(r / Vt) with 3.596 L of fresh water a rack and 45 L in the tank
  expect(Math.abs(Number(peak) / Number(trough) - Math.exp(3.596 / 45))).toBeLessThan(0.01)
  await accessible(page)

  await page.goto(`${visit}/report`)
  await expect(page.getByText(/The tank settles at .* all at once, so every rack swings/u)).toBeVisible()
})

test('a tank that a probe controls: entered in the set-up, its set point comes from a conductivity check and is on the report', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Millbrook School kitchen')
  await page.getByRole('button', { name: /start a visit/iu }).click()
  await page.waitForURL(/\/visit\//u)
  const visit = page.url()
  await setUp(page)
  await page.getByRole('radio', { name: 'a probe holds the strength' }).click()
  await expect(page.getByRole('radio', { name: 'a probe holds the strength' })).toBeChecked()
  await page.goto(visit)
  await benchOf(page, /detergent pump/iu)
  await page.getByText('The wash over the service').click()
  const wash = page.getByRole('region', { name: 'Wash tank' })
  await expect(wash.getByText(/^A conductivity check is missing/u)).toBeVisible()
  await expect(wash.getByText(/Set point/u)).toHaveCount(0)

  await page.getByText('Check the strength with a strip or a kit').click()
  const checks = page.getByRole('region', { name: 'Check the strength' })
  await checks.getByLabel('Kind of check').selectOption({ label: 'Conductivity' })
  await checks.getByRole('button', { name: 'Add this check' }).click()
  await checks.getByLabel(/^Reading at 25 °C/u).fill('2300')
  await checks.getByLabel(/^One g\/L adds/u).fill('900')
  await checks.getByLabel(/^Plain water/u).fill('400')
  // the window of the demo site is 2 to 2.4 g/L around 2.2: 400 + 900 x 2.2, and its ends
  await expect(wash.getByText(/^Set point 2380 µS\/cm at 25 °C; the window is 2200 to 2560\./u)).toBeVisible()
  await accessible(page)

  await checks.getByLabel(/^One g\/L adds/u).fill('1000')
  await expect(wash.getByText(/^Set point 2600 µS\/cm/u)).toBeVisible()
  await page.goto(`${visit}/report`)
  await expect(page.getByText(/Set point 2600 µS\/cm at 25 °C/u)).toBeVisible()
})
