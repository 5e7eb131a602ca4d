import { randomUUID } from 'node:crypto'
import { readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import Papa from 'papaparse'
import { dropFolder, startHost } from './support/host'
import { addDemoSites, expect, test } from './support/program'

async function openPortfolio(page: Page): Promise<void> {
  await addDemoSites(page)
  await page.getByRole('link', { name: 'Portfolio' }).click()
  await expect(page.getByRole('heading', { name: 'An average month of 5 sites' })).toBeVisible()
  await expect(page.getByText(/^Working out/u)).toBeHidden()
}

const names = (page: Page): Promise<string[]> =>
  page.getByRole('region', { name: 'All sites' }).locator('tbody tr.site th').allTextContents()
const trimmed = (texts: readonly string[]): readonly string[] => texts.map((text) => text.trim())

/** What a button saves, read as a spreadsheet would read it. */
async function saved(page: Page, button: string, delimiter: string): Promise<readonly string[][]> {
  const coming = page.waitForEvent('download')
  await page.getByRole('button', { name: button, exact: true }).click()
  const text = await readFile((await (await coming).path()) ?? '', 'utf8')
  expect(text.startsWith('\ufeff')).toBe(true)
  return Papa.parse<string[]>(text.slice(1), { delimiter, skipEmptyLines: true }).data
}

test.describe('all sites', () => {
  test('are sorted by name, both ways, and by money', async ({ program }) => {
    await openPortfolio(program)
    const head = program.getByRole('columnheader', { name: 'Site', exact: true })
    await head.getByRole('button').click()
    await expect(head).toHaveAttribute('aria-sort', 'ascending')
    const up = trimmed(await names(program))
    expect(up).toEqual(up.toSorted((a, b) => a.localeCompare(b)))
    await head.getByRole('button').click()
    await expect.poll(async () => trimmed(await names(program))).toEqual(up.toReversed())
    await program.getByRole('button', { name: 'Cost a month' }).click()
    await expect(program.getByRole('columnheader', { name: 'Cost a month' })).toHaveAttribute(
      'aria-sort',
      'descending',
    )
    await expect(
      program.getByText(/^Money is sorted within each currency: [A-Z]{3}, then [A-Z]{3}/u),
    ).toBeVisible()
    const costs = await program.locator('tr.site td.strong').allTextContents()
    const currencies = costs.map((cost) => /[A-Z]{3}/u.exec(cost)?.[0] ?? '')
    for (const currency of new Set(currencies)) {
      const own = costs.filter((cost) => cost.includes(currency)).map((cost) => Number.parseFloat(cost))
      expect(own).toEqual(own.toSorted((a, b) => b - a))
    }
    expect(currencies.filter((one, at) => one !== currencies[at - 1])).toHaveLength(new Set(currencies).size)
  })

  test('are found by a part of their name and by product, and led into', async ({ program }) => {
    await openPortfolio(program)
    await program.getByLabel('Find a site').fill('school')
    await program.getByLabel('Find a site').press('Enter')
    await expect.poll(async () => trimmed(await names(program))).toEqual(['Millbrook School kitchen'])
    await program.getByRole('region', { name: 'All sites' }).getByRole('link').click()
    await expect(program.getByRole('heading', { level: 1, name: 'What it uses and costs' })).toBeVisible()
  })

  test('come to nothing where none is found: no sum and nothing to save, but the way back', async ({
    program,
  }) => {
    await openPortfolio(program)
    await program.getByLabel('Find a site').fill('nowhere')
    await program.getByLabel('Find a site').press('Enter')
    await expect(program.getByText('No site is like that.')).toBeVisible()
    await expect(program.getByRole('heading', { name: /^An average month/u })).toBeHidden()
    await expect(program.getByRole('button', { name: 'Months', exact: true })).toBeHidden()
    await program.getByRole('button', { name: 'Show all sites' }).click()
    await expect(program.getByRole('heading', { name: 'An average month of 5 sites' })).toBeVisible()
  })

  test('keep currencies apart, and each sum is the sum of its sites', async ({ program }) => {
    await openPortfolio(program)
    const rows = await program.locator('tr.site td.strong').allTextContents()
    const sum = (currency: string): number =>
      rows
        .filter((row) => row.includes(currency))
        .reduce((total, row) => total + Math.round(Number.parseFloat(row) * 100), 0)
    const totals = await program.locator('.totals .number.huge').allTextContents()
    expect(totals).toHaveLength(2)
    for (const total of totals) {
      const currency = total.includes('EUR') ? 'EUR' : 'USD'
      expect(Math.round(Number.parseFloat(total) * 100)).toBe(sum(currency))
    }
  })

  for (const [country, sign, separator] of [
    ['the decimal sign is a point', 'point', ','],
    ['the decimal sign is a comma', 'comma', ';'],
  ] as const)
    test(`are saved as a spreadsheet reads them where ${country}`, async ({ program }) => {
      await addDemoSites(program)
      await program.getByRole('link', { name: 'Settings' }).click()
      await program.getByRole('radio', { name: sign === 'comma' ? /1,5/u : /1\.5/u }).check()
      await program.getByRole('link', { name: 'Portfolio' }).click()
      await expect(program.getByText(/^Working out/u)).toBeHidden()
      await program.getByRole('button', { name: 'Sites', exact: true }).waitFor()
      const [head = [], ...rows] = await saved(program, 'Sites', separator)
      expect(head.slice(0, 3)).toEqual(['Site', 'Currency', 'Cost a month'])
      expect(rows).toHaveLength(5)
      const diner = rows.find((row) => row[0] === 'Copper Spoon Diner')
      expect(diner?.[2]).toMatch(sign === 'comma' ? /^\d+,\d\d$/u : /^\d+\.\d\d$/u)
      const months = await saved(program, 'Months', separator)
      expect(months[0]).toEqual(['Site', 'Month', 'Currency', 'Cost'])
      expect(months).toHaveLength(1 + 5 * 25)
    })

  test('make one shopping list that leads to the shelf of each site', async ({ program }) => {
    await openPortfolio(program)
    const list = program.getByRole('region', { name: 'Shopping list' })
    await list.getByRole('radio', { name: 'within 30 days' }).check()
    await list.locator('summary').first().click()
    await list.locator('tbody').getByRole('link').first().click()
    await expect(program.getByRole('button', { name: 'Stock and orders' })).toHaveAttribute(
      'aria-pressed',
      'true',
    )
  })

  test('are shown month by month with the figures beside', async ({ program }) => {
    await openPortfolio(program)
    await expect(
      program.getByRole('img', { name: /^The coming 12 months of these sites: \d+/u }),
    ).toBeVisible()
    await program.getByRole('radio', { name: 'USD' }).check()
    await program.getByRole('region', { name: 'Month by month' }).getByText('The figures as a table').click()
    await expect(program.getByRole('table', { name: 'Cost by month, USD' })).toBeVisible()
  })

  for (const scheme of ['light', 'dark'] as const)
    test(`have no fault that axe can find, ${scheme}`, async ({ program }) => {
      await program.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' })
      await openPortfolio(program)
      const found = await new AxeBuilder({ page: program })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
        .analyze()
      expect(found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`)).toEqual([])
    })

  test('fit 320 px without sideways scrolling of the page', async ({ program }) => {
    await openPortfolio(program)
    await program.setViewportSize({ width: 320, height: 700 })
    const over = await program.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
    expect(over).toBe(0)
  })

  test('are cards on a phone: site, reason and cost in sight without sideways scrolling, and still a table', async ({
    program,
  }) => {
    await openPortfolio(program)
    await program.setViewportSize({ width: 360, height: 740 })
    const region = program.getByRole('region', { name: 'All sites' })
    const cut = await region.evaluate((box) =>
      [box, ...box.querySelectorAll('tr.site, tr.site a, tr.site .mark, tr.site .cost')]
        .filter(
          (part) => part.scrollWidth > part.clientWidth + 1 || part.scrollHeight > part.clientHeight + 1,
        )
        .filter((part) => part !== box || part.scrollWidth > part.clientWidth)
        .map((part) => part.textContent),
    )
    expect(cut).toEqual([])
    const table = region.getByRole('table')
    await expect(table).toHaveAttribute('aria-rowcount', '6')
    await expect(table.getByRole('rowheader')).toHaveCount(5)
    await expect(table.getByRole('columnheader')).toHaveCount(7)
    // a few sites stand on the page whole, not in a box that scrolls within it
    expect(await region.evaluate((box) => box.scrollHeight - box.clientHeight)).toBe(0)
    await program.getByLabel('Sorted by').selectOption({ label: 'Site' })
    const up = trimmed(await names(program))
    await expect
      .poll(async () => trimmed(await names(program)))
      .toEqual(up.toSorted((a, b) => a.localeCompare(b)))
    await program.getByRole('button', { name: 'Turn round: last to first' }).click()
    await expect
      .poll(async () => trimmed(await names(program)))
      .toEqual(up.toSorted((a, b) => b.localeCompare(a)))
  })
})

test.describe('the table of all sites at twice the size of text', () => {
  test('cuts no reason and no way to the others', async ({ program }) => {
    await openPortfolio(program)
    await program.evaluate(() => {
      document.documentElement.style.fontSize = '200%'
    })
    const region = program.getByRole('region', { name: 'All sites' })
    await expect(region.getByRole('button', { name: /see all \d+ reasons/u }).first()).toBeVisible()
    const cut = await region.evaluate((box) =>
      [...box.querySelectorAll('tr.site .marks, tr.site th, tr.site .attention')]
        .filter((part) => part.scrollHeight > part.clientHeight + 1)
        .map((part) => part.textContent),
    )
    expect(cut).toEqual([])
  })
})

/** Copies of the demo sites, with their last two visits, under names of their own. */
function manySites(folder: string, howMany: number): void {
  const sites = join(folder, 'sites')
  const files = readdirSync(sites)
    .filter((name) => /^[\da-f-]{36}\.json$/u.test(name))
    .map((name) => JSON.parse(readFileSync(join(sites, name), 'utf8')) as { site: { visits: unknown[] } })
  for (let n = 0; n < howMany; n += 1) {
    const file = files[n % files.length]
    if (file === undefined) return
    const id = randomUUID()
    const copy = {
      ...file,
      site: {
        ...file.site,
        id,
        name: `Kitchen ${String(n).padStart(4, '0')}`,
        visits: file.site.visits.slice(-2),
      },
    }
    writeFileSync(join(sites, `${id}.json`), JSON.stringify(copy))
  }
}

const worst = (times: readonly number[]): string => `${Math.round(Math.max(...times))} ms`

test('two thousand sites scroll and sort with a handful of rows in the page', async ({ page }) => {
  test.setTimeout(600_000)
  let host = await startHost()
  const { dataFolder } = host
  try {
    await page.goto(await host.address())
    await addDemoSites(page)
    await host.stop()
    manySites(dataFolder, 2000)
    host = await startHost(dataFolder)
    await page.goto(await host.address())
    await page.evaluate(() => {
      location.hash = '#/portfolio'
    })
    await expect(page.getByText(/^Working out \d+ of 2005 sites$/u)).toBeVisible()
    await expect(page.getByText(/^Working out/u)).toBeHidden({ timeout: 500_000 })
    await expect(page.getByRole('heading', { name: 'An average month of 2005 sites' })).toBeVisible()
    const table = page.getByRole('region', { name: 'All sites' }).getByRole('table')
    await expect(table).toHaveAttribute('aria-rowcount', '2006')
    expect(await page.locator('tr.site').count()).toBeLessThan(60)

    await page.getByRole('button', { name: 'Site', exact: true }).click()
    const frames = await page.evaluate(async () => {
      const box = document.querySelector('.scroller')
      if (box === null) return []
      const gaps: number[] = []
      let before = performance.now()
      for (let step = 0; step < 60; step += 1) {
        box.scrollTop += 1500
        await new Promise(requestAnimationFrame)
        gaps.push(performance.now() - before)
        before = performance.now()
      }
      box.scrollTop = box.scrollHeight
      return gaps
    })
    await expect(page.getByRole('link', { name: 'Quayside Banqueting' })).toBeVisible()
    expect(await page.locator('tr.site').count()).toBeLessThan(60)

    const sorts = await page.evaluate(async () => {
      const times: number[] = []
      for (const button of document.querySelectorAll<HTMLElement>('.scroller thead button')) {
        const before = performance.now()
        button.click()
        await new Promise(requestAnimationFrame)
        await new Promise(requestAnimationFrame)
        times.push(performance.now() - before)
      }
      return times
    })
    test.info().annotations.push({
      type: 'times',
      description: `slowest of 60 scrolls ${worst(frames)}, slowest of 7 sorts ${worst(sorts)}`,
    })
    console.log(test.info().annotations.at(-1)?.description)
  } finally {
    await host.stop()
    dropFolder(dataFolder)
  }
})
