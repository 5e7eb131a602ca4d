import type { Page } from '@playwright/test'
import { expect, openDemoSite, test } from './support/program'
import { benchOf, countedRun, goToPart, Hands, quickTime, watch } from './visit-hands'

async function startVisit(page: Page, site: string): Promise<void> {
  await quickTime(page)
  await openDemoSite(page, site)
  await page.getByRole('button', { name: 'Start a visit' }).click()
}

async function allInOrder(page: Page): Promise<void> {
  const rest = page.getByRole('button', { name: /^(?:All|The other) \d+ in order$/u })
  await rest.first().waitFor()
  while ((await rest.count()) > 0) await rest.first().click()
}

/** One series of runs of a minute, each from the same level. */
async function series(page: Page, from: string, levels: readonly string[]): Promise<void> {
  const primed = page.getByRole('button', { name: 'Line is primed' })
  if (await primed.isVisible()) await primed.click()
  const start = page.getByRole('textbox', { name: /^Level before/u })
  if ((await start.inputValue()) === '') {
    await start.fill(from)
    await page.keyboard.press('Enter')
  }
  const hands = new Hands(page, 'keys')
  for (const level of levels) {
    await watch(page).focus()
    await countedRun(hands, level)
  }
}

async function take(page: Page, cylinder: RegExp): Promise<void> {
  await page.getByRole('button', { name: 'Change', exact: true }).click()
  const box = page.getByRole('combobox', { name: 'Cylinder or cup' })
  const names = await box.locator('option').allTextContents()
  await box.selectOption({ label: names.find((name) => cylinder.test(name)) ?? '' })
  await page.getByRole('button', { name: 'Done', exact: true }).click()
}

const turned = (page: Page) => page.getByRole('button', { name: 'Turned it', exact: true })
const screw = (page: Page) => page.getByRole('region', { name: 'The screw' })
const result = (page: Page) => page.getByRole('region', { name: 'Result' })

test('chlorine beside an acid, a sanitizer too weak and a dead screw: nothing is turned blindly, and the report says stop', async ({
  program: page,
}) => {
  await startVisit(page, 'Copper Spoon Diner')
  // a condition that bears on the dose holds the screw back until it is put right
  await page.getByRole('radio', { name: 'Not in order' }).first().check()
  await goToPart(page, /Sanitizer pump/u)
  const cautions = page.getByRole('region', { name: /^Caution/u })
  await expect(cautions.filter({ hasText: 'must never mix' })).toBeVisible()
  await expect(watch(page)).toHaveCount(0)
  const asked = await cautions.count()
  await benchOf(page, /Sanitizer pump/u)
  await take(page, /^50 mL/u)
  await series(page, '50', ['33', '33.5', '33'])
  await expect(result(page)).toContainText('Below the window')
  await expect(result(page)).toContainText('Do not serve on this ware')
  await expect(screw(page)).toContainText('A site condition that bears on the dose is not as it should be.')

  await goToPart(page, /Before you adjust/u)
  await page.getByRole('radio', { name: 'In order' }).first().check()
  await allInOrder(page)
  await goToPart(page, /Sanitizer pump/u)
  await expect(page.getByRole('heading', { name: /^Turn the screw clockwise/u })).toBeVisible()
  await page.getByText('Working of this advice').click()
  await expect(page.getByRole('region', { name: 'Working: Next turn of the screw' })).toContainText(
    'Flow expected after the move',
  )
  // the screw does nothing
  for (let move = 0; move < 2 && (await turned(page).isVisible()); move += 1) {
    await turned(page).click()
    await series(page, '50', ['33', '33.5', '33'])
    await expect(result(page)).toContainText('Not as foretold: the screw did less')
  }
  await expect(screw(page)).toContainText('The screw does not act')
  await expect(turned(page)).toBeHidden()

  // general cautions are read once per visit, those of a product once per product; moving a tube has its own
  await goToPart(page, /Rinse aid pump/u)
  await expect(cautions.filter({ hasText: 'Label and safety data sheet' })).toBeVisible()
  await expect(cautions.filter({ hasText: 'Gloves and goggles' })).toHaveCount(0)
  expect(await cautions.count()).toBeLessThan(asked)
  await benchOf(page, /Rinse aid pump/u)
  // they come before the hands do it, where it is begun, and nothing is written down as done until it is
  await page.getByRole('button', { name: 'Put on a new container' }).click()
  await expect(cautions.filter({ hasText: 'Before a tube changes container' })).toBeInViewport()
  await page.getByRole('button', { name: 'Flushed, wiped, and the label read' }).click()
  await page.getByRole('button', { name: 'Fit a new tube' }).click()
  await expect(cautions.filter({ hasText: 'A panel must come off' })).toBeInViewport()
  await expect(page.getByText(/^Done here so far/u)).toHaveCount(0)
  await page.getByRole('button', { name: /^Isolated, locked, tagged and tried/u }).click()
  await page.getByRole('button', { name: 'New container put on' }).click()
  await page.getByRole('button', { name: 'New tube fitted' }).click()
  await expect(page.getByText('Done here so far: 2 steps')).toBeVisible()

  await goToPart(page, /Close the visit/u)
  await page.getByRole('button', { name: /^Add for service rep: Sanitizer pump was left outside/u }).click()
  await page.getByRole('button', { name: /^Add for kitchen: Take the machine out of use/u }).click()
  await page.getByRole('button', { name: 'Close visit and show the report' }).click()
  const customer = page.getByRole('article', { name: 'For the customer' })
  await expect(customer.getByRole('region', { name: 'Stop' })).toContainText('Do not serve')
  await expect(customer).toContainText('Kitchen: Take the machine out of use until a strip confirms')
  await expect(customer).toContainText('The screw does not act')
  const file = page.getByRole('article', { name: 'For the file' })
  await expect(file).toContainText('Gloves and goggles')
  await expect(file).toContainText('These must never meet')
  await expect(file).not.toContainText('protect-yourself')
  await expect(file).toContainText('Not as foretold')
})

test('a flow that goes the wrong way stops the turning, and says to compare with the mark', async ({
  program: page,
}) => {
  await startVisit(page, 'Lantern Lane Cafe')
  await allInOrder(page)
  await benchOf(page, /Rinse aid pump/u)
  await series(page, '10', ['3', '3', '3.05'])
  await expect(page.getByRole('heading', { name: /^Turn the screw anticlockwise/u })).toBeVisible()
  await turned(page).click()
  await series(page, '10', ['1.5', '1.5', '1.55'])
  await expect(screw(page)).toContainText('The flow went the wrong way')
  await expect(screw(page)).toContainText('Compare with the witness mark')
  await expect(result(page)).toContainText('Not as foretold')
  await expect(turned(page)).toBeHidden()
})

test('five rising runs, or a run that cannot be read, are no ground to decide on', async ({
  program: page,
}) => {
  await startVisit(page, 'Lantern Lane Cafe')
  await allInOrder(page)
  await benchOf(page, /Rinse aid pump/u)
  await series(page, '10', ['4.6', '4.4', '4.2', '4.0', '3.8'])
  await expect(result(page)).toContainText('Not fit to decide by yet')
  await expect(result(page)).toContainText('air is still leaving the line')
  await expect(page.getByText('0 of 2')).toBeVisible()
  await expect(screw(page)).toContainText('No turn yet')

  const runs = page.getByRole('region', { name: 'Runs of this series' })
  await page.getByRole('button', { name: 'Change run 2' }).click()
  await page
    .locator('.editor')
    .getByRole('textbox', { name: /^Level after/u })
    .fill('4.x')
  await page.keyboard.press('Tab')
  await expect(runs).toContainText('Run 2 is not in the series')
  await expect(result(page)).toContainText('From 4 of 5 runs.')
})

test('a hundred steps of a visit are taken back and done again, one key each', async ({ program: page }) => {
  await openDemoSite(page, 'Lantern Lane Cafe')
  await page.getByRole('button', { name: 'Start a visit' }).click()
  const first = page.getByRole('radiogroup').or(page.getByRole('group')).first()
  const ways = ['In order', 'Not checked'].map((name) => page.getByRole('radio', { name }).first())
  await expect(first).toBeVisible()
  for (let step = 0; step < 104; step += 1) await ways[step % 2]?.check()
  for (let step = 0; step < 103; step += 1) await page.keyboard.press('Control+z')
  await expect(ways[0] ?? first).toBeChecked()
  await page.keyboard.press('Control+z')
  await expect(ways[0] ?? first).not.toBeChecked()
  await expect(page.getByText('6 to answer').first()).toBeVisible()
  for (let step = 0; step < 104; step += 1) await page.keyboard.press('Control+Shift+z')
  await expect(ways[1] ?? first).toBeChecked()
  await expect(page.getByRole('button', { name: 'Redo: nothing to do again' })).toBeVisible()
  await expect(page.getByText(/^Saved/u).first()).toBeVisible()
})

test('what the kitchen says of its glasses is one tap from the visit', async ({ program: page }) => {
  await openDemoSite(page, 'Lantern Lane Cafe')
  await page.getByRole('button', { name: 'Start a visit' }).click()
  await page
    .getByRole('region', { name: 'Bench' })
    .getByRole('link', { name: /glass check/u })
    .click()
  await expect(page.getByRole('heading', { level: 1, name: 'Glass check' })).toBeVisible()
})
