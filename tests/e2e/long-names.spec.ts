import type { Page } from '@playwright/test'
import { openAt } from './support/history'
import { expect, openDemoSite, test } from './support/program'
import { benchOf, goToPart, quickTime, watch } from './visit-hands'

/** What stands out to the right of the window; tables that scroll by themselves and sheets of paper may. */
const outside = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const width = document.documentElement.clientWidth
    const past = [...document.querySelectorAll('body *')]
      .filter((node) => node.getBoundingClientRect().right > width + 1)
      .filter((node) => node.closest('.table-scroll, .sheet, .visually-hidden') === null)
      .map((node) => `${node.tagName} ${node.textContent.trim().slice(0, 40)}`)
    return document.documentElement.scrollWidth > width ? [`page of ${width}`, ...past] : past
  })

test('a name of one long word breaks on a phone rather than be cut off or push the page wider', async ({
  program: page,
}) => {
  const long = 'Donaudampfschifffahrtsgesellschaftskantine'
  await page.setViewportSize({ width: 320, height: 740 })
  await openDemoSite(page, 'Lantern Lane Cafe')
  const site = new URL(page.url()).hash
  const open = (hash: string): Promise<void> => openAt(page, hash)
  await open(`${site}/setup`)
  const site2 = page.getByRole('region', { name: 'Site', exact: true })
  await site2.getByLabel('Name').fill(long)
  const machine = page.getByRole('region', { name: /^Machine:/u }).first()
  await machine.getByRole('textbox', { name: 'Name', exact: true }).fill(`${long}spülmaschine`)
  await page.getByText('More about this pump').first().click()
  await machine
    .getByRole('textbox', { name: 'Name of the pump' })
    .first()
    .fill('Klarspülmittelkonzentratpumpenschlauch')
  await page.keyboard.press('Tab')
  expect(await outside(page)).toEqual([])
  for (const hash of ['#/', site, `${site}/trend`, `${site}/spend`, `${site}/glass`]) {
    await open(hash)
    await expect(page.getByText(long).first()).toBeVisible()
    expect(await outside(page), hash).toEqual([])
  }
  await open(site)
  await page.getByRole('button', { name: 'Start a visit' }).click()
  expect(await outside(page)).toEqual([])
  await benchOf(page, /Klarsp/u)
  expect(await outside(page)).toEqual([])
  await goToPart(page, /Close the visit/u)
  expect(await outside(page)).toEqual([])
  await page.getByRole('button', { name: 'Close visit and show the report' }).click()
  // words with a button behind them do not stand one on a line: the button goes under them
  const words = page.getByText('The name of your firm stands at the head of the report once it is entered.')
  await expect(words).toBeVisible()
  expect((await words.boundingBox())?.width).toBeGreaterThan(200)
})

test('while the first run is running nobody is asked for its level, and a new tube is the tube of the report', async ({
  program: page,
}) => {
  await quickTime(page)
  await openDemoSite(page, 'Lantern Lane Cafe')
  // the record of the demo says this tube is over its time
  const late = page.getByText(/^Detergent pump: its tube is \d+ days over its time/u)
  await expect(late).toBeVisible()
  await page.getByRole('button', { name: 'Start a visit' }).click()
  await benchOf(page, /Detergent pump/u)
  await page.getByRole('button', { name: 'Fit a new tube' }).click()
  await benchOf(page, /Detergent pump/u)
  await page.getByRole('button', { name: 'New tube fitted' }).click()
  await page.getByRole('button', { name: 'Line is primed' }).click()
  await page.getByRole('textbox', { name: /^Level before/u }).fill('100')
  await page.keyboard.press('Enter')
  await watch(page).click()
  const result = page.getByRole('region', { name: 'Result' })
  await expect(result).toContainText('The run is being timed.')
  await expect(result).not.toContainText('is empty')
  await page.getByRole('button', { name: 'Throw this time away' }).click()

  await goToPart(page, /Close the visit/u)
  await page.getByRole('button', { name: 'Close visit and show the report' }).click()
  const record = page.getByRole('article', { name: 'For the file' }).getByRole('region', {
    name: 'Detergent pump',
  })
  await expect(record).toContainText('new tube fitted')
  const today = new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'Europe/Dublin',
  }).format(new Date())
  await expect(record).toContainText(`Tube fitted ${today}.`)
  await page.getByRole('link', { name: 'Overview' }).click()
  await expect(page.getByRole('heading', { name: 'What comes next' })).toBeVisible()
  await expect(late).toHaveCount(0)
})
