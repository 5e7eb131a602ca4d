import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { PDFParse } from 'pdf-parse'
import { expect, openDemoSite, test } from './support/program'

async function openSpend(page: Page, name: string, view: string | null = null): Promise<void> {
  await openDemoSite(page, name)
  await page.getByRole('navigation', { name: 'This site' }).getByRole('link', { name: 'Spend' }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'What it uses and costs' })).toBeVisible()
  if (view !== null) await page.getByRole('button', { name: view, exact: true }).click()
}

/** Money as written on the page, in hundredths. */
const cents = (text: string | null): number =>
  Math.round(Number((text ?? '').replaceAll(/[^\d.−-]/gu, '').replace('−', '-')) * 100)

async function look(page: Page, rows: string): Promise<void> {
  await page.getByRole('button', { name: 'Read in deliveries' }).click()
  const dialog = page.getByRole('dialog', { name: 'Read in a list of deliveries' })
  await dialog.getByLabel('Or paste rows here').fill(rows)
  await dialog.getByRole('button', { name: 'Look at the rows' }).click()
}

const undo = (page: Page) => page.getByRole('button', { name: /^Undo:/u })

test.describe('what a site uses and costs', () => {
  test('adds up to the cent, pump by pump, and opens to its working', async ({ program }) => {
    await openSpend(program, 'Copper Spoon Diner')
    const table = program.getByRole('table').filter({ hasText: 'Pump and product' })
    const costs = await table.locator('tbody td.strong').allTextContents()
    const together = await table.locator('tfoot td.strong').textContent()
    expect(costs).toHaveLength(3)
    expect(costs.reduce((sum, cost) => sum + cents(cost), 0)).toBe(cents(together))
    await program.getByRole('button', { name: 'Working of Detergent pump' }).click()
    await expect(program.getByText('L = (N × D + F × m) / 1000', { exact: false }).first()).toBeVisible()
    await expect(program.getByText('M = L × P / C')).toBeVisible()
  })

  test('says how far the counter is from what was stated', async ({ program }) => {
    await openSpend(program, 'Millbrook School kitchen')
    await expect(
      program.getByText(/racks an open day, by the counter .* above\s+the 160 stated/u),
    ).toBeVisible()
    await program.getByRole('button', { name: 'Working of the racks' }).click()
    await expect(program.getByText('N = n × d', { exact: true })).toBeVisible()
  })

  test('shows the months as a picture that says what it finds, and as a table', async ({ program }) => {
    await openSpend(program, 'Lantern Lane Cafe')
    await expect(program.getByRole('img', { name: /^The coming 12 months: \d+ EUR/u })).toBeVisible()
    await program.getByRole('region', { name: 'Month by month' }).getByText('The figures as a table').click()
    const months = program.getByRole('table', { name: 'Cost by month, EUR' })
    expect(await months.getByRole('row', { name: /forecast/u }).count()).toBe(13)
    await program.getByRole('radio', { name: 'Litres' }).check()
    await expect(program.getByRole('table', { name: 'Litres by month' })).toBeVisible()
  })

  test('tells what changed since last year in steps that add up', async ({ program }) => {
    await openSpend(program, 'Lantern Lane Cafe')
    await expect(program.getByRole('img', { name: /A month costs .* than on/u })).toBeVisible()
    const region = program.getByRole('region', { name: 'What changed since last year' })
    await region.getByText('The figures as a table').click()
    const rows = await region.locator('tbody tr').all()
    const cells = await Promise.all(rows.map((row) => row.locator('td').allTextContents()))
    const before = cents(cells[0]?.[1] ?? '')
    const now = cents(cells.at(-1)?.[1] ?? '')
    const steps = cells.slice(1, -1).reduce((sum, [step]) => sum + cents(step ?? ''), 0)
    expect(before + steps).toBe(now)
  })

  test('costs an old visit at its day’s prices and shows today’s beside', async ({ program }) => {
    await openSpend(program, 'Lantern Lane Cafe')
    await program.getByText('An average month as each visit left it').click()
    const rows = program.getByRole('table', { name: 'EUR a month' }).locator('tbody tr')
    const oldest = await rows.last().locator('td').allTextContents()
    // the price of the demo's detergent rose since then
    expect(cents(oldest[2] ?? '')).toBeGreaterThan(cents(oldest[1] ?? ''))
    const newest = await rows.first().locator('td').allTextContents()
    expect(newest[2]).toBe(newest[1])
  })

  test('gives savings with their interval, also where adjusting cost money', async ({ program }) => {
    await openSpend(program, 'Copper Spoon Diner')
    const region = program.getByRole('region', { name: 'What adjusting the pumps changed' })
    await expect(region.getByText(/more spent, because pumps had been under-dosing/u)).toBeVisible()
    await region.getByText('Visit by visit').click()
    await expect(region.getByText(/−\d+\.\d\d\s*± \d/u).first()).toBeVisible()
  })
})

test.describe('stock', () => {
  test('found more used than the pumps were set to, and laid it at the pump’s door', async ({ program }) => {
    await openSpend(program, 'Millbrook School kitchen', 'Stock and orders')
    const card = program.getByRole('article', { name: 'Dish detergent, 20 L, stock against pumps' })
    await card.getByText(/^Earlier counts/u).click()
    await expect(card.getByText('Used more')).toBeVisible()
  })

  test('a count changes the shelf at once and can be taken back', async ({ program }) => {
    await openSpend(program, 'Lantern Lane Cafe', 'Stock and orders')
    const shelf = program.getByRole('article', { name: 'Dish detergent, 5 L', exact: true })
    const before = await shelf.locator('.number.large').textContent()
    await program.getByRole('button', { name: 'Count stock' }).click()
    const dialog = program.getByRole('dialog', { name: 'Count stock' })
    await dialog.getByRole('button', { name: 'Book the count' }).click()
    await expect(dialog.getByText('Choose the product.')).toBeVisible()
    await dialog.getByLabel('Product').selectOption({ label: 'Dish detergent, 5 L' })
    await dialog.getByLabel('Full containers').fill('3')
    await dialog.getByLabel(/^In the container in use/u).fill('5.4 kg')
    await dialog.getByLabel(/^In the container in use/u).press('Enter')
    await expect(dialog.getByLabel(/^Empty container/u)).toBeVisible()
    await dialog.getByLabel(/^Empty container/u).fill('0.6')
    await dialog.getByRole('button', { name: 'Book the count' }).click()
    // 3 x 5 L and (5.4 - 0.6) kg of 1.2 g/mL = 4 L
    await expect(shelf.locator('.number.large')).toHaveText('19.0')
    await undo(program).click()
    await expect(shelf.locator('.number.large')).toHaveText(before ?? '')
  })

  test('says when to order, how many whole containers, and opens to the reorder point', async ({
    program,
  }) => {
    await openSpend(program, 'Copper Spoon Diner', 'Stock and orders')
    const shelf = program.getByRole('article', { name: 'Rinse aid, 10 L', exact: true })
    await expect(shelf.getByText(/^Order by|^Order now/u)).toBeVisible()
    await expect(shelf.getByText(/^\d+ × 10 L$/u)).toBeVisible()
    await shelf.getByRole('button', { name: 'Working' }).click()
    await expect(shelf.getByText('R = d × L + SS', { exact: true })).toBeVisible()
  })
})

test.describe('a list of deliveries', () => {
  const HEAD = 'Date;Product;Qty;Delivery note\n'
  const GOOD = '2026-02-03;Rinse aid, 5 L;2;DN-77001\n2026-02-17;Dish detergent, 5 L;4;DN-77002\n'

  test('is looked at first, booked whole, taken back whole, and never booked twice', async ({ program }) => {
    await openSpend(program, 'Lantern Lane Cafe', 'Stock and orders')
    await look(program, HEAD + GOOD)
    const dialog = program.getByRole('dialog')
    await expect(dialog.getByText('2 to book.')).toBeVisible()
    await dialog.getByRole('button', { name: 'Book 2 deliveries' }).click()
    const list = program.getByRole('region', { name: 'Counts and deliveries' })
    await list.getByRole('button', { name: /^Show all/u }).click()
    await expect(list.getByText('DN-77001')).toBeVisible()
    await look(program, HEAD + GOOD)
    await expect(program.getByText('0 to book and 2 booked already, left out.')).toBeVisible()
    await expect(program.getByRole('button', { name: 'Book 0 deliveries' })).toBeDisabled()
    await program.getByRole('button', { name: 'Close', exact: true }).click()
    await undo(program).click()
    await expect(list.getByText('DN-77001')).toBeHidden()
    await expect(list.getByText('DN-77002')).toBeHidden()
  })

  test('with bad rows says which and why, and books nothing by halves', async ({ program }) => {
    await openSpend(program, 'Lantern Lane Cafe', 'Stock and orders')
    const before = await program.getByRole('button', { name: /^Show all/u }).textContent()
    await look(program, `${HEAD}${GOOD}31.04.2026;Rinse aid, 5 L;1;x\n2026-02-20;=1+1;1;y\n`)
    const dialog = program.getByRole('dialog')
    await expect(dialog.getByText('Row 4')).toBeVisible()
    await expect(dialog.getByText(/is not a day/u)).toBeVisible()
    await expect(dialog.getByText(/“=1\+1” is not among the products/u)).toBeVisible()
    await expect(dialog.getByRole('button', { name: 'Book 2 deliveries' })).toBeDisabled()
    await dialog.getByRole('button', { name: 'Close', exact: true }).click()
    await expect(program.getByRole('button', { name: /^Show all/u })).toHaveText(before ?? '')
  })

  test('remembers its columns', async ({ program }) => {
    await openSpend(program, 'Lantern Lane Cafe', 'Stock and orders')
    await look(program, 'Tag;Ware;Stk\n2026-02-03;Rinse aid, 5 L;2\n')
    const dialog = program.getByRole('dialog')
    await dialog.getByLabel('Day', { exact: true }).selectOption({ label: 'Tag' })
    await dialog.getByLabel('Product', { exact: true }).selectOption({ label: 'Ware' })
    await dialog.getByLabel('Containers', { exact: true }).selectOption({ label: 'Stk' })
    await dialog.getByRole('button', { name: 'Book 1 delivery' }).click()
    await look(program, 'Ware;Stk;Tag\nRinse aid, 5 L;3;2026-02-05\n')
    await expect(dialog.getByRole('button', { name: 'Book 1 delivery' })).toBeEnabled()
  })

  test('of 50 000 rows shows how far it is and can be stopped', async ({ program }) => {
    await openSpend(program, 'Lantern Lane Cafe', 'Stock and orders')
    await program.getByRole('button', { name: 'Read in deliveries' }).click()
    const rows = Array.from({ length: 50_000 }, (_, n) => `2026-02-03;Rinse aid, 5 L;1;DN-${n}\n`).join('')
    await program.getByLabel('Choose a file').setInputFiles({
      name: 'deliveries.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(HEAD + rows),
    })
    const dialog = program.getByRole('dialog')
    await expect(dialog.getByText(/^Reading the list: \d+ %$/u)).toBeVisible()
    await dialog.getByRole('button', { name: 'Stop' }).click()
    await expect(dialog.getByLabel('Or paste rows here')).toBeVisible()
    await dialog.getByRole('button', { name: 'Close', exact: true }).click()
    await expect(program.getByText('DN-1', { exact: true })).toBeHidden()
  })

  /** Source: Windows code page 1252: 0xE4 is ä, 0x8C is Œ; 0x8C is no letter in ISO 8859-1. */
  test('of an old spreadsheet is read, and the guess about its letters is told', async ({ program }) => {
    await openSpend(program, 'Lantern Lane Cafe', 'Stock and orders')
    await program.getByRole('button', { name: 'Read in deliveries' }).click()
    await program.getByLabel('Choose a file').setInputFiles({
      name: 'old.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('Date;Product;Qty\n2026-02-03;Gl\u00e4ser \u008cuvre;1\n', 'latin1'),
    })
    const dialog = program.getByRole('dialog')
    await expect(dialog.getByText(/does not say how its letters are written/u)).toBeVisible()
    await expect(dialog.getByText(/“Gläser Œuvre” is not among the products/u)).toBeVisible()
  })
})

test.describe('what if', () => {
  test('stands beside today, keeps its name, and becomes a quote of one page', async ({ program }) => {
    await openSpend(program, 'Copper Spoon Diner', 'What if')
    await program.getByRole('button', { name: 'Try something' }).click()
    await program.getByLabel('Name').fill('Busier, stronger')
    await program.getByLabel('Name').press('Enter')
    await program.getByLabel(/^Racks, share of today/u).fill('110')
    await program.getByLabel(/^Racks, share of today/u).press('Enter')
    await program.getByText('Sanitizer pump', { exact: true }).first().click()
    await program.getByLabel(/^Strength of the product/u).fill('12.5')
    await program.getByLabel(/^Strength of the product/u).press('Enter')
    const beside = program.getByRole('region', { name: 'Busier, stronger against today' })
    const cells = await beside.locator('tfoot td').allTextContents()
    expect(cents(cells[0] ?? '') + cents(cells[2] ?? '')).toBe(cents(cells[1] ?? ''))
    await expect(beside.getByText(/a year,/u)).toContainText('±')

    await program.getByRole('button', { name: 'Try something else' }).click()
    await expect(program.getByRole('row', { name: /Busier, stronger/u })).toBeVisible()
    await program.getByRole('button', { name: 'Busier, stronger' }).click()
    await program.getByRole('button', { name: 'Make a quote of it' }).click()
    await expect(program.getByRole('heading', { level: 1, name: 'Busier, stronger' })).toBeVisible()
    const parser = new PDFParse({ data: new Uint8Array(await program.pdf({ format: 'A4' })) })
    const { text, total } = await parser.getText()
    await parser.destroy()
    expect(total).toBe(1)
    expect(text).toContain('Copper Spoon Diner')
    expect(text).toContain('An estimate, not a promise of use.')
    expect(text).not.toContain('Back to the what-ifs')
  })

  test('offers for a pump what does its work, and says what a new product must never meet', async ({
    program,
  }) => {
    await openDemoSite(program, 'Copper Spoon Diner')
    await program.getByRole('link', { name: 'Products', exact: true }).click()
    await program.getByRole('button', { name: 'Sanitizer: add a product' }).click()
    await program.getByLabel('Name', { exact: true }).fill('Acid sanitizer')
    await program.getByLabel('Name', { exact: true }).press('Enter')
    await program.getByRole('checkbox', { name: /^Acid/u }).check({ force: true })
    await program.goto(`${program.url().split('#')[0] ?? ''}#/`)
    await program.getByRole('link', { name: 'Copper Spoon Diner' }).click()
    await program.getByRole('navigation', { name: 'This site' }).getByRole('link', { name: 'Spend' }).click()
    await program.getByRole('button', { name: 'What if', exact: true }).click()
    await program.getByRole('button', { name: 'Try something' }).click()
    const editor = program.getByRole('region', { name: 'What it changes' })
    await editor.getByText('Detergent pump', { exact: true }).click()
    const forDetergent = editor
      .getByLabel('Product', { exact: true })
      .locator('visible=true')
      .locator('option')
    for (const name of await forDetergent.allTextContents())
      expect(name).not.toMatch(/rinse|sanitizer|chlorine/iu)
    await editor.getByText('Detergent pump', { exact: true }).click()
    await editor.getByText('Sanitizer pump', { exact: true }).click()
    await editor
      .getByLabel('Product', { exact: true })
      .locator('visible=true')
      .selectOption({ label: 'Acid sanitizer' })
    const caution = editor.getByRole('region', { name: /never meet/u })
    await expect(caution).toContainText('poisonous gas')
    for (const [label, value] of [
      [/^Price of a container/u, '20'],
      [/^Container size/u, '5'],
    ] as const) {
      const box = editor.getByRole('textbox', { name: label }).locator('visible=true')
      await box.fill(value)
      await box.press('Enter')
    }
    await program.getByRole('button', { name: 'Make a quote of it' }).click()
    await expect(program.getByRole('region', { name: 'What would change' })).toContainText('poisonous gas')
  })

  test('shows no result and offers no quote before anything was changed', async ({ program }) => {
    await openSpend(program, 'Copper Spoon Diner', 'What if')
    await program.getByRole('button', { name: 'Try something' }).click()
    const beside = program.getByRole('region', { name: 'What if 1 against today' })
    await expect(beside).toContainText('Nothing changed yet')
    await expect(beside).not.toContainText(/\d/u)
    await expect(program.getByRole('row', { name: /^What if 1/u })).toContainText('nothing changed yet')
    const quote = program.getByRole('button', { name: 'Make a quote of it' })
    await expect(quote).toBeHidden()
    const racks = program.getByLabel(/^Racks, share of today/u)
    await racks.fill('100')
    await racks.press('Enter')
    await expect(beside).toContainText('Nothing changed yet')
    await racks.fill('110')
    await racks.press('Enter')
    await expect(beside).toContainText('Costs more')
    await expect(quote).toBeEnabled()
  })

  test('is undone step by step', async ({ program }) => {
    await openSpend(program, 'Copper Spoon Diner', 'What if')
    await program.getByRole('button', { name: 'Try something' }).click()
    await program.getByLabel(/^Racks, share of today/u).fill('110')
    await program.getByLabel(/^Racks, share of today/u).press('Enter')
    await undo(program).click()
    await expect(program.getByLabel(/^Racks, share of today/u)).toHaveValue('')
    await undo(program).click()
    await expect(program.getByRole('button', { name: 'Try something' })).toBeVisible()
  })
})

for (const view of ['Use and cost', 'Stock and orders', 'What if'])
  test.describe(`the view “${view}”`, () => {
    for (const scheme of ['light', 'dark'] as const)
      test(`has no fault that axe can find, ${scheme}`, async ({ program }) => {
        await program.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' })
        await openSpend(program, 'Lantern Lane Cafe', view)
        if (view === 'What if') await program.getByRole('button', { name: 'Try something' }).click()
        const found = await new AxeBuilder({ page: program })
          .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
          .analyze()
        expect(found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`)).toEqual([])
      })

    test('fits 320 px without sideways scrolling', async ({ program }) => {
      await openSpend(program, 'Lantern Lane Cafe', view)
      if (view === 'What if') await program.getByRole('button', { name: 'Try something' }).click()
      await program.setViewportSize({ width: 320, height: 700 })
      const over = await program.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      )
      expect(over).toBe(0)
    })
  })
