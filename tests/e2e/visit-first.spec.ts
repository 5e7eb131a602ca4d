import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { rest } from './conventions/walk'
import { expect, test } from './support/program'
import { benchOf, countedRun, Hands, quickTime, watch } from './visit-hands'

/** What breaks a rule of access, or sticks out of a window of 360 px, with nothing known of the pump yet. */
async function faults(page: Page): Promise<readonly string[]> {
  await page.evaluate(() => scrollTo(0, 0))
  await rest(page)
  const tags = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']
  const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze()
  const whole = page.viewportSize() ?? { width: 1366, height: 768 }
  await page.setViewportSize({ width: 360, height: 740 })
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  )
  await page.setViewportSize(whole)
  return [
    ...violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.html.slice(0, 140)).join(' | ')}`),
    ...(over > 0 ? [`scrolls sideways by ${over} px`] : []),
  ]
}

test('a first site is made from nothing, and its first pump told from the window, without leaving the visit', async ({
  program: page,
}) => {
  await quickTime(page)
  await page.getByRole('button', { name: 'Add your first site' }).click()
  await page.keyboard.type('Old Mill Brewpub')
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Undercounter machine' }).click()
  await page
    .getByRole('button', { name: /visit$/iu })
    .first()
    .click()

  const rest = page.getByRole('button', { name: /^(?:All|The other) \d+ in order$/u })
  await rest.first().waitFor()
  while ((await rest.count()) > 0) await rest.first().click()
  await benchOf(page, /Rinse aid/u)
  expect(await faults(page)).toEqual([])
  // the cylinder in the hand is not in any list yet
  await page.getByRole('radio', { name: 'Class A' }).check({ force: true })
  await page.getByRole('button', { name: '10 mL', exact: true }).click()
  expect(await faults(page)).toEqual([])
  await page.getByRole('button', { name: 'I lift the tube out to read' }).click()
  await page.getByRole('button', { name: 'Line is primed' }).click()

  // timed first: a flow needs nothing but the cylinder
  await page.getByRole('textbox', { name: /^Level before/u }).fill('10')
  await page.keyboard.press('Enter')
  const hands = new Hands(page, 'keys')
  for (const after of ['4.95', '4.9', '4.95']) {
    await watch(page).focus()
    await countedRun(hands, after)
  }
  const result = page.getByRole('region', { name: 'Result' })
  await expect(result).toContainText('mL/min')
  await expect(result).toContainText('No decision yet')

  // 5.07 mL/min for 9 s is 0.76 mL, in 3.785 L 200 ppm v/v (worked by hand)
  const facts = page.getByRole('region', { name: 'What the dose is worked out from' })
  await facts
    .getByRole('combobox', { name: 'Product' })
    .selectOption({ label: 'A product that is not listed…' })
  await facts.getByLabel('Name of the new product').fill('Bar rinse aid')
  await facts.getByRole('button', { name: 'Add it to the products' }).click()
  await facts.getByRole('textbox', { name: /^Runs for one rack/u }).fill('9')
  await facts.getByRole('textbox', { name: /^Target/u }).fill('200')
  await facts.getByRole('textbox', { name: /^Fresh water per rack/u }).fill('3.785')
  await page.keyboard.press('Tab')
  // a new product has its own label to read
  await benchOf(page, /Rinse aid/u)
  await expect(result).toContainText('In window')
  await expect(result).toContainText(/20\d ± \d+\s*ppm v\/v/u)
  await expect(facts.getByText('Product, seconds, water and target: all there')).toBeVisible()
})
