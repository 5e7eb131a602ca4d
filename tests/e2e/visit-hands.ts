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
 * Lets time pass without waiting for it: both clocks of the page are moved on, as they would be by waiting. The page
 * is loaded anew for it.
 */
export async function quickTime(page: Page): Promise<void> {
  await page.getByRole('button', { name: /demo sites/iu }).waitFor()
  await page.addInitScript(() => {
    const key = 'test.passed'
    const steady = performance.now.bind(performance)
    const wall = Date.now.bind(Date)
    const before = Number(sessionStorage.getItem(key) ?? '0')
    const w = globalThis as unknown as { passed: number; wallSet: number }
    w.passed = 0
    w.wallSet = Number(sessionStorage.getItem('test.wallSet') ?? '0')
    performance.now = () => steady() + w.passed
    // a page that loads later starts its steady clock from the wall clock of that moment
    const origin = performance.timeOrigin + before + w.wallSet
    Object.defineProperty(performance, 'timeOrigin', { get: () => origin })
    Date.now = () => wall() + before + w.passed + w.wallSet
    addEventListener('pagehide', () => {
      sessionStorage.setItem(key, String(before + w.passed))
      sessionStorage.setItem('test.wallSet', String(w.wallSet))
    })
  })
  await page.reload()
}

/** Remembers this moment of the page's clock, so that a slow machine does not add to a time that is to be exact. */
export const markNow = (page: Page): Promise<void> =>
  page.evaluate(() => {
    ;(globalThis as unknown as { marked: number }).marked = performance.now()
  })

export const passSinceMark = (page: Page, seconds: number): Promise<void> =>
  page.evaluate((ms) => {
    const w = globalThis as unknown as { passed: number; marked: number }
    w.passed += Math.max(0, w.marked + ms - performance.now())
  }, seconds * 1000)

export const pass = (page: Page, seconds: number): Promise<void> =>
  page.evaluate((ms) => {
    const w = globalThis as unknown as { passed: number }
    w.passed += ms
  }, seconds * 1000)

/** Somebody, or the network, sets the clock on the wall. */
export const setWallClock = (page: Page, seconds: number): Promise<void> =>
  page.evaluate((ms) => {
    const w = globalThis as unknown as { wallSet: number }
    w.wallSet += ms
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
