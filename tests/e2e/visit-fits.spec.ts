import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { rest } from './conventions/walk'
import { expect, openDemoSite, test } from './support/program'
import { benchOf, goToPart, pass, quickTime, watch } from './visit-hands'

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']

/** Walks through the states of a visit, stopping at each. */
async function everyState(page: Page, stop: (name: string) => Promise<void>): Promise<void> {
  await page.getByRole('button', { name: 'Start a visit' }).click()
  await stop('conditions')
  await page.getByRole('radio', { name: 'Not in order' }).first().check()
  await page.getByText('Why it matters').first().click()
  await stop('a condition not in order')
  await page.getByRole('radio', { name: 'In order' }).first().check()
  for (let group = 0; group < 4; group += 1)
    await page.getByRole('button', { name: /^(?:All|The other) \d+ in order$/u }).click()
  await goToPart(page, /Rinse aid pump/u)
  await stop('cautions')
  await benchOf(page, /Rinse aid pump/u)
  await stop('bench, not primed')
  await page.getByRole('button', { name: 'Line is primed' }).click()
  await page.getByRole('button', { name: 'Change', exact: true }).click()
  await stop('how the test is made')
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await page.getByRole('textbox', { name: /^Level before/u }).fill('10')
  await watch(page).click()
  await stop('the watch running')
  await page.getByRole('button', { name: 'Throw this time away' }).click()
  for (const after of ['3.4', '3.3', '3.4']) {
    await watch(page).click()
    await pass(page, 60.05)
    await expect(page.getByRole('textbox', { name: /^Level after/u })).toBeFocused()
    await page.keyboard.type(after)
  }
  await stop('a series with its result and a turn')
  await page.getByRole('button', { name: 'Working of flow' }).click()
  await page.getByRole('button', { name: 'Working of the decision' }).click()
  await page.getByRole('button', { name: 'Change run 2' }).click()
  await stop('workings and a run being changed')
  await page.getByRole('button', { name: 'Turned it', exact: true }).click()
  await stop('turned')
  await goToPart(page, /Close the visit/u)
  await page.getByText('Count the stock').click()
  await page.getByRole('button', { name: /^Add advice for the kitchen/u }).click()
  await stop('closing')
  await page.getByRole('button', { name: 'Close visit and show the report' }).click()
  await page.getByRole('article', { name: 'For the file' }).waitFor()
  await stop('report')
  await page.getByRole('link', { name: 'Back to the visit' }).click()
  await page.getByText('Add a correction', { exact: true }).click()
  await stop('closed')
}

const wide = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)

/** Controls that stick out over the right edge, by their words. */
const cutOff = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main button, main input, main select, main a')]
      .filter((node) => node.offsetParent !== null && node.closest('.table-scroll, .record') === null)
      .filter((node) => node.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
      .map((node) => node.textContent || node.id),
  )

/** Controls lower than a gloved finger wants: 44 px for main ones, 24 px for every other. */
const small = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main button, main select, main input, main summary')]
      .filter((node) => node.offsetParent !== null)
      .map((node) => (node.matches('[type=radio], [type=checkbox]') ? (node.closest('label') ?? node) : node))
      .map((node) => ({
        words: (node.textContent || node.id).trim(),
        high: node.getBoundingClientRect().height,
        least: node.matches('.button, .box, .big, .part') ? 44 : 24,
      }))
      .filter(({ high, least }) => high < least - 0.5)
      .map(({ words, high }) => `${words}: ${high} px`),
  )

async function breaches(page: Page, colours: boolean): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] })
  // a theme changes colours and nothing else
  const { violations } = await (
    colours ? axe.withRules(['color-contrast', 'link-in-text-block']) : axe.withTags(TAGS)
  ).analyze()
  return violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.html.slice(0, 140)).join(' | ')}`)
}

// 1280 px at 400 % is 320 CSS px wide and 256 high: WCAG 2.2, understanding 1.4.10
const NARROW = [
  ['at 360 px', { width: 360, height: 740 }],
  ['at 400 % zoom', { width: 320, height: 256 }],
] as const

// a trace of every state takes longer than the walk
test.use({ hasTouch: true, colorScheme: 'light', trace: 'off' })

test.describe('every state of a visit', () => {
  test('breaks no rule of access in either theme, is large enough for gloves, and fits 360 px and 400 % zoom', async ({
    program,
  }) => {
    await quickTime(program)
    await openDemoSite(program, 'Lantern Lane Cafe')
    const whole = program.viewportSize() ?? { width: 1366, height: 768 }
    const found: string[] = []
    await everyState(program, async (name) => {
      const note = (how: string, faults: readonly string[]): number =>
        found.push(...faults.map((fault) => `${name}, ${how}: ${fault}`))
      // a bar that sticks over links half scrolled away is no fault of theirs
      await program.evaluate(() => scrollTo(0, 0))
      await rest(program)
      note('light', await breaches(program, false))
      note('sizes', await small(program))
      await program.emulateMedia({ colorScheme: 'dark' })
      await rest(program)
      note('dark', await breaches(program, true))
      await program.emulateMedia({ colorScheme: 'light' })
      for (const [how, viewport] of NARROW) {
        await program.setViewportSize(viewport)
        const over = await wide(program)
        note(how, [...(over > 0 ? [`scrolls sideways by ${over} px`] : []), ...(await cutOff(program))])
      }
      await program.setViewportSize(whole)
    })
    expect(found).toEqual([])
  })
})
