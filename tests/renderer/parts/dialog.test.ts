import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { browserPage, type BrowserPage } from '../support/browser-page.ts'

let browser: BrowserPage

beforeAll(async () => {
  browser = await browserPage(new URL('./harness/', import.meta.url))
}, 120_000)
afterAll(async () => {
  await browser.close()
})
beforeEach(async () => {
  // each test in a history of its own: away, and back on a first screen that a link led on from
  await browser.page.goto('about:blank')
  await browser.open('?fresh')
  await press('Products')
  await shows('Screen products')
}, 60_000)

afterEach(async () => {
  await expect.poll(atRest).toBe(true)
})

const press = (name: string): Promise<void> =>
  browser.page
    .locator('a, button')
    .filter({ hasText: new RegExp(`^${name}$`, 'u') })
    .last()
    .click()
const open = (): Promise<string[]> => browser.page.locator('dialog[open] h2').allTextContents()
const dialogs = (...titles: readonly string[]): Promise<void> => expect.poll(open).toEqual(titles)
const shows = (heading: string): Promise<void> =>
  expect.poll(() => browser.page.locator('h1').textContent()).toBe(heading)
const focused = (): Promise<string> =>
  browser.page.evaluate(() => document.activeElement?.textContent?.trim() ?? '')
/** Whether the history has come to rest: the entry we are on knows of as many dialogs as are open. */
const atRest = (): Promise<boolean> =>
  browser.page.evaluate(
    () =>
      (history.state as { readonly dialogs: number } | null)?.dialogs ===
      document.querySelectorAll('dialog[open]').length,
  )
/** What the browser's own buttons do; then the page is left in peace, to see that nothing more happens. */
const step = async (by: 1 | -1): Promise<void> => {
  await expect.poll(atRest).toBe(true)
  await browser.page.evaluate((steps) => {
    history.go(steps)
  }, by)
  await browser.page.waitForTimeout(250)
}
const entries = (): Promise<number> => browser.page.evaluate(() => history.length)

describe('Back, while a dialog is open', () => {
  it('closes the dialog, stays on the screen, and leaves the screen the next time', async () => {
    await press('Open')
    await dialogs('Outer')
    await step(-1)
    await dialogs()
    await shows('Screen products')
    await step(-1)
    await shows('Screen sites')
    expect(browser.faults).toEqual([])
  })

  it('closes dialogs over dialogs one at a time', async () => {
    await press('Open')
    await dialogs('Outer')
    await press('Open another over it')
    await dialogs('Outer', 'Inner')
    await step(-1)
    await dialogs('Outer')
    await step(-1)
    await dialogs()
    await shows('Screen products')
    await step(-1)
    await shows('Screen sites')
  })

  it('leaves Forward with nothing to do, however often it is pressed', async () => {
    await press('Open')
    await dialogs('Outer')
    await press('Open another over it')
    await dialogs('Outer', 'Inner')
    for (let time = 0; time < 2; time += 1) await step(-1)
    for (let time = 0; time < 3; time += 1) {
      await step(1)
      await dialogs()
      await shows('Screen products')
    }
    await step(-1)
    await shows('Screen sites')
    await step(1)
    await shows('Screen products')
  })

  it('takes one press to leave the screen after dialogs closed by Esc, the cross or a button', async () => {
    const before = await entries()
    for (let time = 0; time < 3; time += 1) {
      await press('Open')
      await dialogs('Outer')
      await browser.page.keyboard.press('Escape')
      await dialogs()
      await browser.page.waitForTimeout(100)
    }
    // one entry at most stays ahead, as after any Back
    expect(await entries()).toBeLessThanOrEqual(before + 1)
    await press('Open')
    await browser.page.getByRole('button', { name: 'Close', exact: true }).click()
    await dialogs()
    await step(-1)
    await shows('Screen sites')
  })

  it('closes a dialog that took the place of another', async () => {
    await press('Open')
    await dialogs('Outer')
    await press('Change for another')
    await dialogs('Swapped')
    await step(-1)
    await dialogs()
    await shows('Screen products')
    await step(-1)
    await shows('Screen sites')
  })

  it('closes one that stops its work first', async () => {
    await press('Open one that stays at work')
    await dialogs('At work')
    await step(-1)
    await dialogs()
    await browser.page.waitForTimeout(300)
    await shows('Screen products')
    await step(-1)
    await shows('Screen sites')
  })

  it('leads back to the screen under a dialog whose link or button led on, and Forward on again', async () => {
    for (const [by, to] of [
      ['Go to instruments', 'Screen instruments'],
      ['Close and go to settings', 'Screen settings'],
    ] as const) {
      await press('Open')
      await dialogs('Outer')
      await press(by)
      await shows(to)
      await dialogs()
      await step(-1)
      await shows('Screen products')
      await dialogs()
      await step(1)
      await shows(to)
      await step(-1)
      await shows('Screen products')
    }
    await step(-1)
    await shows('Screen sites')
  })

  it('does not undo a link that was pressed at once after a dialog was closed', async () => {
    await step(-1)
    await shows('Screen sites')
    for (let time = 0; time < 3; time += 1) {
      await press('Open')
      await dialogs('Outer')
      await expect.poll(atRest).toBe(true)
      await browser.page.evaluate(() => {
        // in the very moment in which the entry of the dialog is on its way out
        const go = history.go.bind(history)
        history.go = (by) => {
          history.go = go
          go(by)
          document.querySelector<HTMLElement>('main a[href="#/products"]')?.click()
        }
        document.querySelector('dialog')?.close()
      })
      await shows('Screen products')
      await browser.page.waitForTimeout(300)
      await shows('Screen products')
      await step(-1)
      await shows('Screen sites')
    }
  })

  it('asks for no press that does nothing after the page was loaded anew', async () => {
    await press('Open')
    await dialogs('Outer')
    await browser.page.reload()
    await shows('Screen products')
    await browser.page.waitForTimeout(250)
    await step(-1)
    await shows('Screen sites')
  })

  it('steps over the entry of a dialog that was left by a typed address', async () => {
    await press('Open')
    await dialogs('Outer')
    await browser.page.waitForTimeout(100)
    await browser.page.evaluate(() => {
      location.hash = '#/portfolio'
    })
    await shows('Screen portfolio')
    // the dialog of this page stands over every screen: it goes with Back, and Forward finds the screen behind it
    await step(-1)
    await dialogs()
    await step(-1)
    await shows('Screen products')
    await step(1)
    await shows('Screen portfolio')
  })
})

describe('the keyboard, after a dialog', () => {
  it('is where it came from, whether by Esc, Back or a button', async () => {
    for (const leave of [
      () => browser.page.keyboard.press('Escape'),
      () => step(-1),
      () => browser.page.getByRole('button', { name: 'Close', exact: true }).click(),
    ]) {
      await press('Open')
      await dialogs('Outer')
      await leave()
      await dialogs()
      await expect.poll(focused).toBe('Open')
    }
  })

  it('is on the dialog under it after one over another', async () => {
    await press('Open')
    await press('Open another over it')
    await dialogs('Outer', 'Inner')
    await press('Done')
    await dialogs('Outer')
    await expect.poll(focused).toBe('Open another over it')
  })

  it('is on what stands there now where the opener is gone', async () => {
    await press('Open')
    await press('Close and take away what opened it')
    await dialogs()
    await expect.poll(focused).toBe('Open one that stays at work')
  })
})
