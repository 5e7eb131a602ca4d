import { expect, test } from './support/program'
import { benchOf, countedRun, Hands, quickTime, watch } from './visit-hands'

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
  while ((await rest.count()) > 0) await rest.first().click()
  await benchOf(page, /Rinse aid/u)
  // the cylinder in the hand is not in any list yet
  await page.getByRole('radio', { name: 'Class A' }).check({ force: true })
  await page.getByRole('button', { name: '10 mL', exact: true }).click()
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
