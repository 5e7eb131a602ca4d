import { expect, openDemoSite, test } from './support/program'
import { goToPart } from './visit-hands'

test('with two machines the head of a visit and its report say whose counter reads what, also on a phone', async ({
  program: page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 })
  await openDemoSite(page, 'Quayside Banqueting')
  await page.getByRole('button', { name: /^(?:Start a|Resume the) visit$/u }).click()
  const counters = page.getByRole('textbox', { name: /^Rack counter/u })
  await counters.nth(0).fill('125759')
  await counters.nth(1).fill('58275')
  await counters.nth(1).press('Enter')
  const head = page
    .getByRole('banner')
    .or(page.locator('main header'))
    .filter({ hasText: 'in window' })
    .first()
  await expect(head).toContainText('Conveyor: 125759 racks')
  await expect(head).toContainText('Bar glasswasher: 58275 racks')
  await goToPart(page, /Close the visit/u)
  await page.getByRole('button', { name: 'Close visit and show the report' }).click()
  const file = page.getByRole('article', { name: 'For the file' })
  await expect(file).toContainText('Conveyor: 125759; Bar glasswasher: 58275')
  await expect(file.getByRole('rowheader', { name: 'Rack counter, Bar glasswasher' })).toBeVisible()
  await expect(page.getByRole('article', { name: 'For the customer' })).toContainText(
    'No site condition was checked.',
  )
})
