import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { signsApart } from './conventions/in-page'
import { openDemoSite, expect, test } from './support/program'
import { goToPart } from './visit-hands'

const RULES = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']

const accessible = async (page: Page): Promise<void> => {
  const found = await new AxeBuilder({ page }).withTags(RULES).include('main').analyze()
  expect(found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`)).toEqual([])
}

/** Takes the strength of the sanitizer out of the library, as a rep who never had the label would have it. */
async function withoutStrength(page: Page): Promise<void> {
  await openDemoSite(page, 'Copper Spoon Diner')
  await page.goto(`${page.url()}/setup`)
  const pump = page.getByRole('article', { name: /sanitizer/iu })
  await pump.getByRole('button', { name: 'Edit product' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel('Strength is given as').selectOption({ label: 'not given' })
  await page.keyboard.press('Escape')
  await expect(dialog).toBeHidden()
}

test('what is missing is named with what it keeps from being shown, and leads to its box', async ({
  program: page,
}) => {
  await withoutStrength(page)
  const list = page.getByRole('region', { name: 'What is still missing' })
  const strength = list.getByRole('button', { name: /the strength of Chlorine sanitizer/u })
  await expect(strength).toBeVisible()
  await expect(list.getByText('Without it: no mg/L of active substance.')).toBeVisible()
  await strength.click()
  const box = page.getByRole('dialog').getByLabel('Strength is given as')
  await expect(box).toBeFocused()
  await page.keyboard.press('Escape')

  const seconds = page.getByRole('article', { name: /sanitizer/iu }).getByLabel(/^Runs for one rack/u)
  await seconds.fill('')
  await seconds.press('Enter')
  await list.getByRole('button', { name: /how many seconds it runs per rack/u }).click()
  await expect(seconds).toBeFocused()
  await accessible(page)
})

test('on the bench a window in active substance asks for the strength of the product and takes it there', async ({
  program: page,
}) => {
  await withoutStrength(page)
  await page
    .getByRole('button', { name: /(?:start|resume).*visit/iu })
    .first()
    .click()
  await goToPart(page, /sanitizer pump/iu)
  const facts = page.getByRole('region', { name: 'What the dose is worked out from' })
  await expect(facts.getByText('Still needed for a dose: strength')).toBeVisible()
  await facts.getByLabel('Strength is given as').selectOption('trade-percent')
  await facts.getByRole('textbox', { name: /^Strength/u }).fill('9.5')
  await expect(facts.getByText('Product, seconds, water and target: all there')).toBeVisible()
  await accessible(page)
  await page
    .getByText(/^Saved/u)
    .first()
    .waitFor()
  await page.reload()
  await expect(page.getByText(/Still needed for a dose/u)).toHaveCount(0)
})

test('a target outside what the label allows is said beside it, with the label’s limit, until it is put right', async ({
  program: page,
}) => {
  await openDemoSite(page, 'Copper Spoon Diner')
  await page.goto(`${page.url()}/setup`)
  const pump = page.getByRole('article', { name: /sanitizer/iu })
  const said = pump.getByText(
    /^The target lies above what the label of Chlorine sanitizer, 20 L allows: at most 100 mg\/L/u,
  )
  const high = pump.getByLabel('High limit')
  await expect(high).toBeVisible()
  await expect(pump.getByText(/what the label of/u)).toHaveCount(0)
  await high.fill('120')
  await high.press('Enter')
  await expect(pump.getByText(/^The high limit lies above what the label/u)).toBeVisible()
  const target = pump.getByLabel('Target')
  await target.fill('110')
  await target.press('Enter')
  await expect(said).toBeVisible()
  await accessible(page)
  expect(await signsApart(page)).toEqual([])
  await target.fill('60')
  await target.press('Enter')
  await high.fill('75')
  await high.press('Enter')
  await expect(pump.getByText(/what the label of/u)).toHaveCount(0)
})
