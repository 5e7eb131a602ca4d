import { type Locator, type Page } from '@playwright/test'

/** Boxes that take a number: the ones with a keypad for it, and those that may be below nought. */
export const numberBoxes = (page: Page): Locator =>
  page
    .locator('dialog[open] input.number, body:not(:has(dialog[open])) main input.number')
    .filter({ visible: true })

const BLAMING = /\b(?:invalid|valid|please|sorry|forbidden|oops)\b/iu

/** Writes a text that is no number into every box for one, looks at what is said about it, and puts back what was there. */
export async function wrongTexts(page: Page): Promise<readonly string[]> {
  const wrong: string[] = []
  const ids = await numberBoxes(page).evaluateAll((all) =>
    all.filter((one) => !(one as HTMLInputElement).readOnly).map((one) => one.id),
  )
  for (const id of ids) {
    const box = page.locator(`[id="${id}"]`)
    if ((await box.count()) === 0) continue
    const before = await box.inputValue()
    await box.fill('about 3x')
    const told = await box.evaluate((node) => {
      node.blur()
      return new Promise<{ here: boolean; text: string; marked: boolean; said: string; name: string }>(
        (done) =>
          requestAnimationFrame(() =>
            done({
              here: node.isConnected,
              text: (node as HTMLInputElement).value,
              marked: node.getAttribute('aria-invalid') === 'true',
              said: (node.getAttribute('aria-describedby') ?? '')
                .split(' ')
                .map((name) => document.getElementById(name))
                .filter((place) => place !== null && place.querySelector('.problem') !== null)
                .map((place) => place?.textContent ?? '')
                .join(' ')
                .trim(),
              name: [...((node as HTMLInputElement).labels ?? [])]
                .map((label) => label.textContent)
                .join(' '),
            }),
          ),
      )
    })
    const name = told.name.replace(/\s+/gu, ' ').trim()
    if (!told.here) wrong.push(`“${name}” goes away while a wrong text stands in it`)
    else {
      if (told.text !== 'about 3x') wrong.push(`“${name}” does not keep the text: it shows “${told.text}”`)
      if (!told.marked) wrong.push(`“${name}” is not marked`)
      if (told.said === '') wrong.push(`“${name}” does not say what is wrong with its text`)
      if (BLAMING.test(told.said)) wrong.push(`“${name}” says “${told.said}”`)
      await box.fill(before)
      await box.blur()
    }
  }
  return wrong
}

/** Turns the wheel and presses the arrows over every box that holds a number. */
export async function wheelAndArrows(page: Page): Promise<readonly string[]> {
  const wrong: string[] = []
  for (const box of await numberBoxes(page).all()) {
    const before = await box.inputValue()
    // a box inside a closed fold is under no wheel
    if (before === '' || !(await box.evaluate((node) => node.checkVisibility()))) continue
    await box.focus()
    const place = await box.boundingBox()
    await page.mouse.move((place?.x ?? 0) + 9, (place?.y ?? 0) + 9)
    await page.mouse.wheel(0, -30)
    await page.mouse.wheel(0, 30)
    for (const key of ['ArrowUp', 'ArrowDown', 'PageUp']) await page.keyboard.press(key)
    const after = await box.inputValue()
    if (after !== before) wrong.push(`${before} became ${after}`)
  }
  return wrong
}
