import { expect, type Locator, type Page } from '@playwright/test'

/**
 * The rep's hands: does what a person does, and counts it. Digits of readings are not counted, each tap and each other
 * key is.
 */
export class Hands {
  count = 0

  constructor(
    readonly page: Page,
    readonly way: 'keys' | 'touch',
  ) {}

  /** One key. */
  async press(key: string): Promise<void> {
    this.count += 1
    await this.page.keyboard.press(key)
  }

  async digits(text: string): Promise<void> {
    await this.page.keyboard.type(text)
  }

  /** Presses a control: a tap, or Tab until the keyboard stands on it and then Enter. */
  async use(control: Locator): Promise<void> {
    if (this.way === 'touch') {
      this.count += 1
      await control.tap()
      return
    }
    await this.reach(control)
    await this.press('Enter')
  }

  /** Comes to a box for typing: a tap, or Tab until it has the keyboard. */
  async enter(box: Locator, text: string): Promise<void> {
    if (this.way === 'touch') {
      this.count += 1
      await box.tap()
    } else await this.reach(box)
    await this.digits(text)
  }

  async reach(control: Locator): Promise<void> {
    await expect(control).toBeVisible()
    for (let steps = 0; steps < 60; steps += 1) {
      if (await control.evaluate((node) => node === document.activeElement)) return
      await this.press('Tab')
    }
    throw new Error(`the keyboard does not come to ${String(control)}`)
  }
}

/**
 * Lets time pass without waiting for it: both clocks of the page stand still, however slow the machine, and go on by
 * what `pass` says only. The page is loaded anew for it. What is entered keeps the date of the computer.
 */
export async function quickTime(page: Page): Promise<void> {
  await page.getByRole('button', { name: /demo sites/iu }).waitFor()
  await page.addInitScript(() => {
    const key = 'test.clock'
    const kept = JSON.parse(sessionStorage.getItem(key) ?? 'null') as Clocks | null
    const w = globalThis as unknown as QuickWindow
    w.clocks = kept ?? { began: Date.now(), passed: 0, wallSet: 0 }
    w.realNow = performance.now.bind(performance)
    const loaded = w.clocks.passed
    // a page that loads later starts its steady clock from the wall clock of that moment
    const origin = w.clocks.began + loaded + w.clocks.wallSet
    performance.now = () => w.clocks.passed - loaded
    Object.defineProperty(performance, 'timeOrigin', { get: () => origin })
    Date.now = () => w.clocks.began + w.clocks.passed + w.clocks.wallSet
    addEventListener('pagehide', () => sessionStorage.setItem(key, JSON.stringify(w.clocks)))
  })
  await page.reload()
}

/** in ms */
interface Clocks {
  readonly began: number
  passed: number
  wallSet: number
}

export interface QuickWindow {
  clocks: Clocks
  /** `performance.now` as the browser has it */
  realNow: () => number
}

export const pass = (page: Page, seconds: number): Promise<void> =>
  page.evaluate((ms) => {
    ;(globalThis as unknown as QuickWindow).clocks.passed += ms
  }, seconds * 1000)

/** Loads the page anew, and `seconds` pass before it is there again. */
export async function reloadAfter(page: Page, seconds: number): Promise<void> {
  await page.evaluate((ms) => {
    addEventListener('pagehide', () => {
      const { clocks } = globalThis as unknown as QuickWindow
      sessionStorage.setItem('test.clock', JSON.stringify({ ...clocks, passed: clocks.passed + ms }))
    })
  }, seconds * 1000)
  await page.reload()
}

/** Somebody, or the network, sets the clock on the wall. */
export const setWallClock = (page: Page, seconds: number): Promise<void> =>
  page.evaluate((ms) => {
    ;(globalThis as unknown as QuickWindow).clocks.wallSet += ms
  }, seconds * 1000)

/** The watch's one big button. */
export const watch = (page: Page): Locator => page.locator('button[data-next].big')

/** A run of the countdown's length: start, let the time pass, read the level that the page asks for next. */
export async function countedRun(hands: Hands, after: string): Promise<void> {
  const { page } = hands
  if (hands.way === 'touch') await hands.use(watch(page))
  else {
    await expect(watch(page)).toBeFocused()
    await hands.press(' ')
  }
  await expect(watch(page)).toContainText('Stop early')
  await pass(page, 60.05)
  const end = page.getByRole('textbox', { name: /^Level after/u })
  await expect(end).toBeFocused()
  await hands.digits(after)
  if (hands.way === 'keys') await hands.press('Enter')
}

/** Goes to a pump's bench and reads its cautions. */
export async function benchOf(page: Page, name: RegExp): Promise<void> {
  await goToPart(page, name)
  const unread = page.getByRole('region', { name: /^Caution/u }).getByRole('button')
  while ((await unread.count()) > 0) await unread.first().click()
  await expect(watch(page)).toBeVisible()
}

/** A part of the visit in its list: conditions, a pump, closing. */
export const partOf = (page: Page, name: RegExp): Locator =>
  page.getByRole('navigation', { name: 'Parts of the visit' }).getByRole('button', { name })

/** Goes to a part of the visit; on a phone the list is unfolded for it. */
export async function goToPart(page: Page, name: RegExp): Promise<void> {
  const fold = page.getByRole('button', { name: 'All parts of the visit' })
  const parts = page.getByRole('navigation', { name: 'Parts of the visit' })
  await fold.or(parts).filter({ visible: true }).first().waitFor()
  if (await fold.isVisible()) await fold.click()
  await partOf(page, name).click()
}
