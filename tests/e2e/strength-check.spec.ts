import { AxeBuilder } from '@axe-core/playwright'
import { openDemoSite, expect, test } from './support/program'

const RULES = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']

test('a strip is held against what the flow of the pump predicts, and label and code beside it', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Copper Spoon Diner')
  const report = await page.locator('a[href*="/visit/"]').first().getAttribute('href')
  const site = page.url().split('#')[0] ?? ''
  await page.goto(`${site}${(report ?? '').replace(/\/report$/u, '')}`)
  await page.getByRole('button', { name: /sanitizer pump/iu }).click()
  const card = page.getByRole('region', { name: 'Check the strength' })
  await expect(card.getByText('Reading and flow agree')).toBeVisible()
  await expect(card.getByRole('img', { name: /by the flow/iu })).toBeVisible()
  await expect(card.getByText(/4-501\.114/u).first()).toBeVisible()
  await expect(card.getByText('Advice, not a verdict', { exact: false })).toBeVisible()
  const found = await new AxeBuilder({ page }).withTags(RULES).include('main').analyze()
  expect(found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`)).toEqual([])
})

test('a drop count entered at the bench is kept, and the wash shows its course and its working', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Millbrook School kitchen')
  await page.getByRole('button', { name: /start a visit/iu }).click()
  await page.getByRole('button', { name: /detergent pump/iu }).click()
  for (;;) {
    const read = page.locator('.caution button').first()
    if (!(await read.isVisible().catch(() => false))) break
    await read.click()
  }
  await page.getByText('Check the strength with a strip or a kit').click()
  const card = page.getByRole('region', { name: 'Check the strength' })
  await card.getByRole('button', { name: 'Add this check' }).click()
  await card.getByLabel(/^Drops to the colour change/u).fill('9')
  await card.getByLabel(/^One drop stands for/u).fill('0.25')
  await expect(card.getByText('± 0.31')).toBeVisible()
  await card.getByRole('button', { name: 'Working of measured' }).click()
  await expect(card.getByText('c = (9 − 0) × 0.25')).toBeVisible()
  await page
    .getByText(/^Saved/u)
    .first()
    .waitFor()
  await page.reload()
  await expect(page.getByLabel(/^Drops to the colour change/u)).toHaveValue('9')
})

test('a local code figure takes the place of the shipped one, with its source', async ({ program: page }) => {
  await page.goto(`${page.url().split('#')[0] ?? ''}#/settings`)
  const card = page.getByRole('region', { name: 'Code figures' })
  await card.getByText('Hot-water sanitizing').click()
  await card.getByRole('button', { name: /every other machine/u }).click()
  await card.getByRole('textbox', { name: /^Local figure/u }).fill('185')
  await card.getByLabel(/^Where it stands/u).fill('county rule 7')
  await expect(card.getByText('at least 185 °F')).toBeVisible()
  await expect(card.getByText('county rule 7')).toBeVisible()
  await card.getByRole('button', { name: 'Use the shipped figure' }).click()
  await expect(card.getByText('at least 180 °F (82 °C)')).toBeVisible()
  const found = await new AxeBuilder({ page }).withTags(RULES).include('main').analyze()
  expect(found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`)).toEqual([])
})
