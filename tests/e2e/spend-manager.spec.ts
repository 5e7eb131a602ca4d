import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { dropFolder, startHost } from './support/host'
import { addDemoSites, expect, openDemoSite, test } from './support/program'

/** What an account manager does on a Monday morning, point by point, through the page itself. */

const thisSite = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'This site' }).getByRole('link', { name })

async function openSpend(page: Page, site: string): Promise<void> {
  await openDemoSite(page, site)
  await thisSite(page, 'Spend').click()
  await expect(page.getByRole('heading', { level: 1, name: 'What it uses and costs' })).toBeVisible()
}

/** Money as written on the page, in hundredths. */
const cents = (text: string): number => Math.round(Number.parseFloat(text) * 100)

/** Every amount of a text with its currency, in hundredths. */
const moneyIn = (text: string): readonly (readonly [string, number])[] =>
  [...text.matchAll(/(\d+\.\d\d) ([A-Z]{3})/gu)].map(([, amount = '', currency = '']) => [
    currency,
    cents(amount),
  ])

const head = (page: Page) => page.getByRole('region', { name: 'An average month costs' })
const headMoney = async (page: Page): Promise<number> =>
  Number.parseFloat((await head(page).locator('.number.huge').textContent()) ?? '')

test('a closed month entered in the calendar makes the average month cheaper and is said', async ({
  program,
}) => {
  await openSpend(program, 'Lantern Lane Cafe')
  const before = await headMoney(program)
  await head(program).getByRole('link', { name: 'Change the calendar' }).click()
  const calendar = program.getByRole('region', { name: 'Calendar' })
  await expect(calendar.getByRole('heading', { name: 'Calendar' })).toBeFocused()
  await calendar.getByRole('button', { name: 'Add a closed period' }).click()
  const first = await calendar.getByLabel('Closed from').last().inputValue()
  const last = new Date(Date.parse(first) + 72 * 86_400_000).toISOString().slice(0, 10)
  await calendar.getByLabel('Last closed day').last().fill(last)
  await calendar.getByLabel('Last closed day').last().press('Enter')
  await thisSite(program, 'Spend').click()
  await expect(head(program)).toContainText('closed 73 days in the coming year')
  // 73 of 365 days: a fifth of racks, fills and money is gone; lines are rounded to the cent
  expect(Math.abs((await headMoney(program)) / before - 0.8)).toBeLessThan(0.001)
})

test('a price with a larger container holds from its day on, and an earlier visit keeps its own', async ({
  program,
}) => {
  await openSpend(program, 'Lantern Lane Cafe')
  const before = await headMoney(program)
  await program.getByRole('link', { name: 'Products' }).click()
  await program.getByRole('button', { name: /Dish detergent, 5 L/u }).click()
  await program.getByRole('button', { name: 'Add a price' }).click()
  await program.getByLabel(/^New price of a container/u).fill('41.00')
  await program.getByLabel(/^New price of a container/u).press('Enter')
  await program.getByLabel(/^For a container of/u).fill('20')
  await program.getByLabel(/^For a container of/u).press('Enter')
  await program.getByRole('button', { name: 'Add this price' }).click()
  await program.getByRole('link', { name: 'Sites', exact: true }).click()
  await program.getByRole('link', { name: 'Lantern Lane Cafe' }).click()
  await thisSite(program, 'Spend').click()
  // 20.50 for 5 L is 4.10 a litre; 41.00 for 20 L is half of it
  const row = program.getByRole('row', { name: /^Detergent pump/u })
  const [litres = '', containers = ''] = await row.locator('td.figure').allTextContents()
  expect(Number.parseFloat(litres) / Number.parseFloat(containers)).toBeCloseTo(20, 0)
  expect(await headMoney(program)).toBeLessThan(before)
  await program.getByText('An average month as each visit left it').click()
  const oldest = program.getByRole('table', { name: 'EUR a month' }).locator('tbody tr').last()
  const [, then = '', now = ''] = await oldest.locator('td').allTextContents()
  expect(Number.parseFloat(now)).toBeLessThan(Number.parseFloat(then))
})

test('chlorine that will not be used while it keeps is named, with its delivery', async ({ program }) => {
  await openSpend(program, 'Copper Spoon Diner')
  await program.getByRole('button', { name: 'Stock and orders' }).click()
  const shelf = program.getByRole('article', { name: 'Chlorine sanitizer, 20 L', exact: true })
  await expect(shelf.getByText(/^What came on .* (?:kept|keeps) until/u)).toBeVisible()
})

test('a quote says every change it makes, water and container too, on one page', async ({ program }) => {
  await openSpend(program, 'Copper Spoon Diner')
  await program.getByRole('button', { name: 'What if', exact: true }).click()
  await program.getByRole('button', { name: 'Try something' }).click()
  await program.getByLabel(/^Fresh water per rack/u).fill('80')
  await program.getByLabel(/^Fresh water per rack/u).press('Enter')
  await program.getByText('Detergent pump', { exact: true }).first().click()
  for (const [label, value] of [
    [/^Container size/u, '10'],
    [/^Price of a container/u, '33'],
    [/^Dose, share of today/u, '95'],
  ] as const) {
    await program.getByLabel(label).last().fill(value)
    await program.getByLabel(label).last().press('Enter')
  }
  await program.getByRole('button', { name: 'Make a quote of it' }).click()
  const proposed = program.getByRole('region', { name: 'What would change' })
  await expect(proposed.getByText('Fresh water per rack: 80 % of today', { exact: false })).toBeVisible()
  await expect(
    proposed.getByText('Detergent pump: dose 95 % of today, containers of 10 L and 33 USD a container.'),
  ).toBeVisible()
})

test('a file with a line of 100 MB is refused with its row, and nothing is booked', async ({
  program,
}, info) => {
  await openSpend(program, 'Lantern Lane Cafe')
  await program.getByRole('button', { name: 'Stock and orders' }).click()
  const before = await program.getByRole('button', { name: /^Show all/u }).textContent()
  await program.getByRole('button', { name: 'Read in deliveries' }).click()
  const path = info.outputPath('long.csv')
  writeFileSync(path, `Date;Product;Qty\n2026-02-03;Rinse aid, 5 L;1\n${'x'.repeat(100_000_000)}\n`)
  await program.getByLabel('Choose a file').setInputFiles(path)
  await expect(program.getByRole('dialog').getByRole('alert')).toContainText(
    'Row 3 is longer than a row of a list can be',
  )
  await program.getByRole('button', { name: 'Close', exact: true }).click()
  await expect(program.getByRole('button', { name: /^Show all/u })).toHaveText(before ?? '')
})

test('a site of another currency without cents is counted in whole units, with a decimal comma', async ({
  program,
}) => {
  const dayBefore = new Date(Date.now() - 86_400_000).toISOString().slice(0, 10)
  await openDemoSite(program, 'Copper Spoon Diner')
  await program.getByRole('link', { name: 'Settings' }).click()
  await program.getByRole('radio', { name: /1,5/u }).check()
  await program.getByRole('link', { name: 'Products' }).click()
  for (const name of ['Rinse aid, 10 L', 'Low-temperature detergent, 20 L', 'Chlorine sanitizer, 20 L']) {
    const line = program.getByRole('button', { name: new RegExp(`^${name}`, 'u') })
    await line.click()
    await program.getByRole('button', { name: 'Add a price' }).click()
    // the day may have turned here and not yet at the site
    await program.getByLabel('New price from').fill(dayBefore)
    await program.getByLabel(/^New price of a container/u).fill('9000')
    await program.getByLabel(/^New price of a container/u).press('Enter')
    await program.getByLabel('Currency', { exact: true }).last().fill('JPY')
    await program.getByLabel('Currency', { exact: true }).last().press('Enter')
    await program.getByRole('button', { name: 'Add this price' }).click()
    await line.click()
  }
  await program.getByRole('link', { name: 'Sites', exact: true }).click()
  await program.getByRole('link', { name: 'Copper Spoon Diner' }).click()
  await thisSite(program, 'Set-up').click()
  await program.getByText('Currency, units, time zone, notes').click()
  await program.getByLabel('Currency', { exact: true }).fill('JPY')
  await program.getByLabel('Currency', { exact: true }).press('Enter')
  await thisSite(program, 'Spend').click()
  await expect(head(program).locator('.number.huge')).toHaveText(/^\s*\d+\s+JPY\s*$/u)
  const table = program.getByRole('table').filter({ hasText: 'Pump and product' })
  const costs = (await table.locator('tbody td.strong').allTextContents()).map(Number)
  expect(costs.every(Number.isInteger)).toBe(true)
  expect(String(costs.reduce((sum, cost) => sum + cost, 0))).toBe(
    (await table.locator('tfoot td.strong').textContent())?.trim(),
  )
  await expect(table.getByText(/\d,\d+ ± \d/u).first()).toBeVisible()
  const months = program.getByRole('region', { name: 'Month by month' })
  await months.getByText('The figures as a table').click()
  await expect(months.locator('tbody')).not.toContainText(',')
})

test.describe('all sites on a Monday', () => {
  test('tell every reason for attention, each with the way there, and stay as they were left', async ({
    page,
  }) => {
    let host = await startHost()
    const { dataFolder } = host
    try {
      await page.goto(await host.address())
      await addDemoSites(page)
      await host.stop()
      // one site that nobody has visited yet
      const folder = join(dataFolder, 'sites')
      for (const name of readdirSync(folder).filter((one) => /^[\da-f-]{36}\.json$/u.test(one))) {
        const path = join(folder, name)
        const file = JSON.parse(readFileSync(path, 'utf8')) as {
          readonly site: { readonly name: string; visits: unknown[] }
        }
        if (file.site.name !== 'Quayside Banqueting') continue
        file.site.visits = []
        writeFileSync(path, JSON.stringify(file))
      }
      host = await startHost(dataFolder)
      await page.goto(await host.address())
      await page.getByRole('link', { name: 'Portfolio' }).click()
      const more = page.getByRole('button', { name: /^Quayside Banqueting: see all \d reasons$/u })
      await more.click()
      const dialog = page.getByRole('dialog', { name: 'Quayside Banqueting' })
      await expect(dialog.getByText(/never tested$/u)).toBeVisible()
      await expect(dialog.getByText(/costs? not known$/u)).toBeVisible()
      await page.keyboard.press('Escape')
      await expect(dialog).toBeHidden()
      await expect(more).toBeFocused()

      await page.getByLabel('Find a site').fill('quay')
      await page.getByLabel('Find a site').press('Enter')
      await page.getByRole('button', { name: 'Cost a month' }).click()
      await more.click()
      await dialog.getByRole('link', { name: 'See what is missing' }).click()
      await expect(page.getByRole('heading', { level: 1, name: 'What it uses and costs' })).toBeVisible()
      await page.goBack()
      await expect(page.getByLabel('Find a site')).toHaveValue('quay')
      await expect(page.getByRole('columnheader', { name: 'Cost a month' })).toHaveAttribute(
        'aria-sort',
        'descending',
      )
    } finally {
      await host.stop()
      dropFolder(dataFolder)
    }
  })

  test('of a currency without prices are said to be not known, never nothing, and can be left again', async ({
    page,
  }) => {
    let host = await startHost()
    const { dataFolder } = host
    try {
      await page.goto(await host.address())
      await addDemoSites(page)
      await host.stop()
      const folder = join(dataFolder, 'sites')
      for (const name of readdirSync(folder).filter((one) => /^[\da-f-]{36}\.json$/u.test(one))) {
        const path = join(folder, name)
        const file = JSON.parse(readFileSync(path, 'utf8')) as { site: { name: string; currency: string } }
        if (file.site.name !== 'Quayside Banqueting') continue
        file.site.currency = 'SEK'
        file.site.name = ''
        writeFileSync(path, JSON.stringify(file))
      }
      host = await startHost(dataFolder)
      await page.goto(await host.address())
      await page.getByRole('link', { name: 'Portfolio' }).click()
      const products = page.getByRole('region', { name: 'By product, an average month' })
      const together = products.getByRole('row', { name: /^Together, SEK/u })
      await expect(together).toContainText('not known')
      await expect(page.locator('main')).not.toContainText('0.00 SEK')
      await expect(page.getByRole('button', { name: /^Site without a name: see all/u })).toBeVisible()

      const months = page.getByRole('region', { name: 'Month by month' })
      await months.getByRole('radio', { name: 'SEK' }).check()
      await expect(months).toContainText('No month of these sites can be costed yet in SEK.')
      await months.getByRole('radio', { name: 'EUR' }).check()
      await expect(months).toContainText(/The coming 12 months of these sites: \d+ EUR/u)

      await products.locator('tbody').last().getByRole('button').first().click()
      const rows = page.getByRole('region', { name: 'All sites' }).locator('tbody tr.site')
      await expect(rows).toHaveCount(1)
      await expect(rows).toContainText('Site without a name')
    } finally {
      await host.stop()
      dropFolder(dataFolder)
    }
  })

  test('can be read on a phone: what each product costs and what is to be ordered, without a sideways scroll', async ({
    program,
  }) => {
    await addDemoSites(program)
    await program.getByRole('link', { name: 'Portfolio' }).click()
    await program.setViewportSize({ width: 360, height: 740 })
    const products = program.getByRole('region', { name: 'By product, an average month' })
    await expect(products.getByText('Together, EUR')).toBeVisible()
    const over = await products.locator('.table-scroll').evaluate((box) => box.scrollWidth - box.clientWidth)
    expect(over).toBeLessThanOrEqual(0)
    const list = program.getByRole('region', { name: 'Shopping list' })
    await list.getByRole('radio', { name: 'within 30 days' }).check()
    await list.locator('summary .what').first().waitFor()
    // what to order stands in one line or two, not in a column of single words
    const lines = await list
      .locator('summary .what')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height))
    expect(lines.length).toBeGreaterThan(0)
    expect(Math.max(...lines)).toBeLessThan(60)
    expect(await program.getByLabel('Sorted by').evaluate((box) => box.clientWidth)).toBeGreaterThan(190)
  })

  test('make a shopping list whose total is the sum of its lines, currency by currency', async ({
    program,
  }) => {
    await addDemoSites(program)
    await program.getByRole('link', { name: 'Portfolio' }).click()
    const list = program.getByRole('region', { name: 'Shopping list' })
    await list.getByRole('radio', { name: 'within 30 days' }).check()
    await expect(list.getByText(/^Together:/u)).toBeVisible()
    const sums = new Map<string, number>()
    for (const line of await list.locator('summary').allTextContents())
      for (const [currency, amount] of moneyIn(line)) sums.set(currency, (sums.get(currency) ?? 0) + amount)
    const total = moneyIn((await list.getByText(/^Together:/u).textContent()) ?? '')
    expect(sums.size).toBeGreaterThan(1)
    expect(new Map(total)).toEqual(sums)
  })

  test('are led to from a product, and its rows add up to the currency’s total', async ({ program }) => {
    await addDemoSites(program)
    await program.getByRole('link', { name: 'Portfolio' }).click()
    const products = program.getByRole('region', { name: 'By product, an average month' })
    await expect(products.getByRole('row', { name: /^Together, EUR/u })).toBeVisible()
    for (const body of await products.locator('tbody').all()) {
      const costs = await body.locator('tr td:last-child').allTextContents()
      const sum = costs.slice(0, -1).reduce((total, cost) => total + cents(cost), 0)
      expect(sum).toBe(cents(costs.at(-1) ?? ''))
    }
    await products.getByRole('button', { name: 'Low-temperature detergent, 20 L' }).click()
    const rows = program.getByRole('region', { name: 'All sites' }).locator('tbody tr.site')
    await expect(rows).toHaveCount(1)
    await expect(rows).toContainText('Copper Spoon Diner')
  })
})
