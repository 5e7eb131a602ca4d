import { rmSync } from 'node:fs'
import type { Browser, Page } from '@playwright/test'
import { newDataFolder, startHost } from '../e2e/support/host'
import { writeBenchSite } from './bench-folder'
import { quantile, summary, type Timing } from './measure'
import { newPage, type Watched } from './page'

/**
 * From a key to the frame that shows what it changed, on the bench of a visit with 120 behind it. Beside it the same
 * keys on a page that has one box and shows its text: what this machine, browser and way of measuring take by themselves, most
 * of it the wait for the next frame.
 */
export interface KeyFigures {
  readonly ours: KeyTimes
  readonly floor: KeyTimes
}

export interface KeyTimes {
  readonly times: Timing
  readonly p95: number
  readonly longTasks: number
}

const ROUNDS = 4
const KEYS = 60

/** The bench and the bare page, in turns, so that what disturbs one disturbs the other. */
export async function keyFigures(browser: Browser): Promise<KeyFigures> {
  const root = newDataFolder()
  const ids = writeBenchSite(root)
  const host = await startHost(root)
  const ours = await newPage(browser)
  const bare = await newPage(browser)
  try {
    await ours.goto(await host.address())
    await openRun(ours, `${host.origin}/#/site/${ids.siteId}/visit/${ids.visitId}`)
    await openBare(bare)
    const seen = { ours: [] as number[], floor: [] as number[], long: 0, longBare: 0 }
    for (let round = 0; round < ROUNDS; round += 1) {
      const bench = await typed(ours)
      const floor = await typed(bare)
      seen.ours.push(...bench.times)
      seen.floor.push(...floor.times)
      seen.long += bench.long
      seen.longBare += floor.long
    }
    return { ours: keyTimes(seen.ours, seen.long), floor: keyTimes(seen.floor, seen.longBare) }
  } finally {
    await ours.context().close()
    await bare.context().close()
    await host.stop()
    rmSync(root, { recursive: true, force: true })
  }
}

const keyTimes = (times: readonly number[], longTasks: number): KeyTimes => ({
  times: summary(times),
  p95: quantile(times, 0.95),
  longTasks,
})

/** Opens the second run of the first pump for correction and puts the keyboard into its reading. */
export async function openRun(page: Page, address: string): Promise<void> {
  await page.locator('li.site').first().waitFor()
  await page.goto(address)
  await page
    .getByRole('button', { name: /Rinse aid pump/u })
    .first()
    .click()
  // however many cautions stand before the bench, each has one button that says it was read
  const change = page.getByRole('button', { name: 'Change run 2' })
  const caution = page.getByRole('region', { name: 'Bench' }).getByRole('button', { name: /^(?:I |Gloves)/u })
  await change.or(caution).first().waitFor()
  while (!(await change.isVisible())) await caution.first().click()
  await change.click()
  await page
    .getByRole('textbox', { name: /^Caught|^Volume/u })
    .last()
    .focus()
  await page.evaluate(watchKeys)
}

async function openBare(page: Page): Promise<void> {
  await page.goto('data:text/html,<!doctype html><input value="5.07"><p>5.07</p>')
  await page.evaluate(() => {
    const box = document.querySelector('input')
    const shown = document.querySelector('p')?.firstChild
    box?.addEventListener('input', () => {
      if (shown instanceof Text) shown.data = box.value
    })
    box?.focus()
  })
  await page.evaluate(watchKeys)
}

/** 5.0, 5.01, 5.0, 5.02, ...: each key changes the figure, so each has a result to paint. */
async function typed(page: Page): Promise<{ readonly times: readonly number[]; readonly long: number }> {
  await page.bringToFront()
  for (let key = 0; key < KEYS; key += 2) {
    await page.keyboard.press('Backspace')
    await page.waitForTimeout(40)
    await page.keyboard.press(String(key % 10))
    await page.waitForTimeout(40)
  }
  return page.evaluate(() => {
    const w = globalThis as unknown as Watched
    return { times: w.keyTimes.splice(0), long: w.longTasks.splice(0).length }
  })
}

/** Runs in the page: notes the time from each key, as the system stamped it, to the frame that shows what it changed. */
function watchKeys(): void {
  const w = globalThis as unknown as Watched
  w.keyTimes = []
  w.longTasks.length = 0
  addEventListener(
    'keydown',
    (event) => {
      const began = event.timeStamp
      requestAnimationFrame(() => {
        // what runs after the frame sees it painted
        const channel = new MessageChannel()
        channel.port1.addEventListener('message', () => w.keyTimes.push(performance.now() - began))
        channel.port1.start()
        channel.port2.postMessage(0)
      })
    },
    true,
  )
}

const told = ({ times, p95 }: KeyTimes): string =>
  `median ${times.median.toFixed(1)} ms, p95 ${p95.toFixed(1)} ms`

export const toldKeys = ({ ours, floor }: KeyFigures): string =>
  `key to painted result on the bench, 120 visits behind: ${told(ours)} (goals 16.7 and 33.3), ${ours.times.times} keys; ` +
  `a bare page that shows its box: ${told(floor)}; tasks over 50 ms while typing: ${ours.longTasks} (goal 0)`
