import type { Locator } from '@playwright/test'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { browserPage, type BrowserPage } from '../support/browser-page.ts'

let browser: BrowserPage

beforeAll(async () => {
  browser = await browserPage(new URL('./harness/', import.meta.url))
}, 120_000)
afterAll(async () => {
  await browser.close()
})
beforeEach(async () => {
  await browser.open()
}, 60_000)

const box = (label: string): Locator => browser.page.getByRole('textbox', { name: label })
const record = async (): Promise<Record<string, unknown>> =>
  JSON.parse((await browser.page.locator('#record').textContent()) ?? '{}')
/** Words a problem never uses. Source: GOV.UK Design System, error message. */
const BLUNT = /\b(?:invalid|valid|please|sorry|forbidden|oops)\b/iu

describe('fields in a real browser', () => {
  it('carry their unit in their accessible name and beside the box', async () => {
    expect(await box('Volume caught (mL)').count()).toBe(1)
    expect(await box('Time (s)').count()).toBe(1)
    expect(await browser.page.getByText('%', { exact: true }).count()).toBe(1)
  })

  it('are plain text to the browser, with a keypad for decimals and no placeholder', async () => {
    for (const label of ['Volume caught', 'Time', 'Share']) {
      expect(await box(label).getAttribute('type')).toBe('text')
      expect(await box(label).getAttribute('inputmode')).toBe('decimal')
    }
    expect(await browser.page.locator('[placeholder], [type=number]').count()).toBe(0)
  })

  it('take a number key by key, and a unit typed with it', async () => {
    await box('Volume caught').fill('')
    await box('Volume caught').pressSequentially('2.5 fl oz')
    expect(await record()).toMatchObject({ volume: { value: '2.5', unit: 'fl-oz-us' } })
    await box('Volume caught').blur()
    expect(await box('Volume caught').inputValue()).toBe('2.5')
    expect(await browser.page.getByLabel('Unit of Volume caught').inputValue()).toBe('fl-oz-us')
    await box('Share').fill('12 %')
    expect(await record()).toMatchObject({ share: '12' })
  })

  it('say what was read while somebody types', async () => {
    await box('Time').fill('1,5')
    expect(await browser.page.getByText('1.5 s', { exact: true }).isVisible()).toBe(true)
  })

  it('change nothing by wheel or arrow keys', async () => {
    await box('Volume caught').focus()
    await box('Volume caught').hover()
    await browser.page.mouse.wheel(0, 400)
    await browser.page.mouse.wheel(0, -400)
    for (const key of ['ArrowUp', 'ArrowDown', 'PageUp']) await browser.page.keyboard.press(key)
    expect(await box('Volume caught').inputValue()).toBe('29.50')
    expect(await record()).toMatchObject({ volume: { value: '29.50', unit: 'mL' } })
  })

  it('Enter takes the entry and goes to the next box', async () => {
    await box('Volume caught').focus()
    await browser.page.keyboard.press('Enter')
    expect(await box('Time').evaluate((element) => element === document.activeElement)).toBe(true)
    await browser.page.keyboard.type('60')
    await browser.page.keyboard.press('Enter')
    expect(await record()).toMatchObject({ seconds: { value: '60', unit: 's' } })
    expect(await box('Share').evaluate((element) => element === document.activeElement)).toBe(true)
  })

  it('Esc puts the box and the record back', async () => {
    await box('Volume caught').fill('31')
    expect(await record()).toMatchObject({ volume: { value: '31' } })
    await browser.page.keyboard.press('Escape')
    expect(await box('Volume caught').inputValue()).toBe('29.50')
    expect(await record()).toMatchObject({ volume: { value: '29.50' } })
  })

  it('keep a text they cannot read, mark it, and tell how to mend it', async () => {
    await box('Volume caught').fill('29.5.1')
    await box('Volume caught').blur()
    expect(await box('Volume caught').inputValue()).toBe('29.5.1')
    expect(await box('Volume caught').getAttribute('aria-invalid')).toBe('true')
    expect(await record()).toMatchObject({ volume: null })
    const ids = ((await box('Volume caught').getAttribute('aria-describedby')) ?? '').split(' ')
    const said = await Promise.all(ids.map((id) => browser.page.locator(`[id="${id}"]`).innerText()))
    expect(said.join(' ')).toContain('29.5.1')
    expect(said.join(' ')).toContain('at the foot of the meniscus')
    expect(said.join(' ')).not.toMatch(BLUNT)
  })

  it('ask which number was meant instead of guessing', async () => {
    await box('Time').fill('1,234')
    expect(await record()).toMatchObject({ seconds: null })
    await browser.page.getByRole('button', { name: '1234 s' }).click()
    expect(await record()).toMatchObject({ seconds: { value: '1234', unit: 's' } })
    expect(await box('Time').getAttribute('aria-invalid')).toBeNull()
  })

  it('convert a quantity when its unit is changed, and show both once', async () => {
    await browser.page.getByLabel('Unit of Volume caught').selectOption('L')
    expect(await record()).toMatchObject({ volume: { value: '0.0295', unit: 'L' } })
    expect(await browser.page.getByText('29.50 mL = 0.0295 L').isVisible()).toBe(true)
  })

  it('mean the unit that was chosen before typing', async () => {
    await box('Volume caught').fill('')
    await browser.page.getByLabel('Unit of Volume caught').selectOption('L')
    await box('Volume caught').fill('3')
    expect(await record()).toMatchObject({ volume: { value: '3', unit: 'L' } })
  })

  it('follow the record when it changes elsewhere', async () => {
    await box('Volume caught').fill('nonsense')
    await browser.page.getByRole('button', { name: 'Set from outside' }).click()
    expect(await box('Volume caught').inputValue()).toBe('12.00')
    expect(await box('Volume caught').getAttribute('aria-invalid')).toBeNull()
  })

  it('write with the decimal sign of the installation and read both', async () => {
    await browser.open('?sign=comma')
    expect(await box('Volume caught').inputValue()).toBe('29,50')
    await box('Time').fill('1.5')
    await box('Time').blur()
    expect(await box('Time').inputValue()).toBe('1,5')
    await box('Time').fill('1.234')
    expect(await browser.page.getByRole('button', { name: '1,234 s' }).isVisible()).toBe(true)
  })

  it('can all be reached and used by keyboard', async () => {
    await browser.page.getByLabel('Catch').focus()
    await browser.page.keyboard.press('ArrowDown')
    await browser.page.getByLabel('Primed').focus()
    await browser.page.keyboard.press('Space')
    await browser.page.getByLabel('Product').focus()
    await browser.page.keyboard.press('S')
    expect(await record()).toMatchObject({ way: 'weighed', on: true, picked: 'b' })
  })

  it('are at least 44 px high and show where the keyboard is', async () => {
    const controls = browser.page.locator('input.box, select.box, .button, .choice label, .toggle label')
    for (const control of await controls.all())
      expect((await control.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(44)
    await browser.page.keyboard.press('Tab')
    const outline = await browser.page.evaluate(() => {
      const style = getComputedStyle(document.activeElement ?? document.body)
      return { width: Number.parseFloat(style.outlineWidth), style: style.outlineStyle }
    })
    expect(outline.style).toBe('solid')
    expect(outline.width).toBeGreaterThanOrEqual(2)
  })

  it('fit a window of 320 px without scrolling sideways', async () => {
    await browser.page.setViewportSize({ width: 320, height: 700 })
    const over = await browser.page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
    await browser.page.setViewportSize({ width: 900, height: 900 })
    expect(over).toBeLessThanOrEqual(0)
  })

  it('cause no fault in the browser', () => {
    expect(browser.faults).toEqual([])
  })
})
