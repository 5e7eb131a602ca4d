import type { Page } from '@playwright/test'
import { expect, openDemoSite, test } from './support/program'
import { benchOf, pass, quickTime, reloadAfter, setWallClock, watch } from './visit-hands'

/** A visit with the rinse aid pump on the bench, its line primed, the watch set to count up. */
async function onTheBench(page: Page, countUp: boolean): Promise<void> {
  await quickTime(page)
  await openDemoSite(page, 'Lantern Lane Cafe')
  await page.getByRole('button', { name: 'Start a visit' }).click()
  await benchOf(page, /Rinse aid pump/u)
  await page.getByRole('button', { name: 'Line is primed' }).click()
  await page.getByRole('textbox', { name: /^Level before/u }).fill('10')
  if (!countUp) return
  await page.getByRole('button', { name: /^Counts down/u }).click()
  await page.getByRole('button', { name: /^Count up/u }).click()
}

/** seconds of the runs, as the table shows them */
const times = (page: Page) => page.locator('section[aria-label="Runs of this series"] tbody td:nth-child(3)')

test('the watch goes on across a reload, and says how long the page was away', async ({ program }) => {
  await onTheBench(program, true)
  await watch(program).click()
  await pass(program, 20)
  await expect(program).toHaveTitle(/^0:20 · /u)
  await reloadAfter(program, 5)
  await expect(watch(program)).toContainText('Stop')
  await expect(program).toHaveTitle(/^0:25 · /u)
  await pass(program, 40)
  await watch(program).click()
  await expect(times(program)).toHaveText('65.00')
  await expect(program.getByText('The page was away for 5.0 s of this run')).toBeVisible()
})

test('a clock set back while the watch runs changes nothing', async ({ program }) => {
  await onTheBench(program, true)
  await watch(program).click()
  await pass(program, 30)
  await setWallClock(program, -3600)
  await pass(program, 30)
  await watch(program).click()
  await expect(times(program)).toHaveText('60.00')
})

test('a clock set forward, or a computer that slept, is asked about and never guessed', async ({
  program,
}) => {
  await onTheBench(program, true)
  await watch(program).click()
  await pass(program, 60)
  await setWallClock(program, 900)
  await watch(program).click()
  const asked = program.getByRole('dialog', { name: 'How long was that run?' })
  await expect(asked).toBeVisible()
  await expect(times(program)).toHaveText('…')
  await asked.getByRole('button', { name: /the clock was set/u }).click()
  await expect(times(program)).toHaveText('60.00')
})

test('the countdown ends by itself, flashes, and asks for the level; the run is as long as asked', async ({
  program,
}) => {
  await onTheBench(program, false)
  await watch(program).click()
  await expect(program).toHaveTitle(/^1:00 · /u)
  // it lasts a moment only
  const flashed = program.evaluate(
    () =>
      new Promise<void>((seen) => {
        const look = new MutationObserver(() => {
          if (document.querySelector('.big.flash') !== null) seen()
        })
        look.observe(document.body, { subtree: true, childList: true, attributes: true })
      }),
  )
  await pass(program, 60.02)
  await flashed
  await expect(program.getByRole('textbox', { name: /^Level after/u })).toBeFocused()
  await expect(times(program)).toHaveText('60.00')
  await expect(program).not.toHaveTitle(/ · /u)
})

test('a countdown whose tone came too late goes on as a plain watch and says so', async ({ program }) => {
  await onTheBench(program, false)
  await watch(program).click()
  await pass(program, 75)
  await expect(program.getByText('The tone could not be given on time')).toBeVisible()
  await watch(program).click()
  await expect(times(program)).toHaveText('75.00')
})

test('laps become runs, each starting where the one before it ended', async ({ program }) => {
  await onTheBench(program, true)
  await watch(program).click()
  const end = program.getByRole('textbox', { name: /^Level after/u })
  for (const level of ['8.5', '7.0']) {
    await pass(program, 20)
    await program.getByRole('button', { name: /^Lap/u }).click()
    await expect(end).toBeFocused()
    await program.keyboard.type(level)
  }
  await pass(program, 20)
  await watch(program).click()
  await end.fill('5.5')
  const rows = program.locator('section[aria-label="Runs of this series"] tbody td:nth-child(2)')
  await expect(rows).toHaveText(['10 → 8.5', '8.5 → 7.0', '7.0 → 5.5'])
})

test('Space starts and stops the watch when no box has the keyboard', async ({ program }) => {
  await onTheBench(program, true)
  await program.getByRole('heading', { level: 2, name: 'Rinse aid pump' }).click()
  await program.keyboard.press('Space')
  await expect(watch(program)).toContainText('Stop')
  await pass(program, 45)
  await program.getByRole('heading', { level: 2, name: 'Rinse aid pump' }).click()
  await program.keyboard.press('Space')
  await expect(times(program)).toHaveText('45.00')
})

test('one pump primes while another is timed', async ({ program }) => {
  await onTheBench(program, false)
  await watch(program).click()
  await benchOf(program, /Detergent pump/u)
  const list = program.getByRole('navigation', { name: 'Parts of the visit' })
  await program.getByRole('button', { name: 'No bubbles: hold the minute' }).click()
  await expect(list.getByRole('button', { name: /Rinse aid pump/u })).toContainText('timing')
  await expect(list.getByRole('button', { name: /Detergent pump/u })).toContainText('priming')
  await pass(program, 60.1)
  await expect(list.getByRole('button', { name: /Rinse aid pump/u })).not.toContainText('timing')
  await pass(program, 60)
  await expect(program.getByText('Line primed, no bubbles')).toBeVisible()
  await list.getByRole('button', { name: /Rinse aid pump/u }).click()
  await expect(times(program)).toHaveText('60.00')
})
