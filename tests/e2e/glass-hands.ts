import { expect, type Page } from '@playwright/test'

/** Where the page stands: the line above its heading, and the heading. */
export async function standing(page: Page): Promise<{ readonly above: string; readonly heading: string }> {
  const heading = page.locator('.kitchen h2').first()
  await expect(heading).toBeVisible()
  const above = page.locator('.kitchen .above')
  return {
    above: (await above.count()) === 0 ? '' : ((await above.first().textContent()) ?? ''),
    heading: (await heading.textContent()) ?? '',
  }
}

export const inTest = async (page: Page): Promise<boolean> => /^Test \d/u.test((await standing(page)).above)

/** Taps the first of the answers named that the page offers, else "I do not know", and waits until it is taken. */
export async function answer(page: Page, wanted: readonly RegExp[]): Promise<string> {
  for (const name of wanted) {
    const button = page.locator('.kitchen').getByRole('button', { name }).first()
    if ((await button.count()) === 0 || (await button.getAttribute('aria-pressed')) === 'true') continue
    const words = (await button.textContent()) ?? ''
    // one of several that may be picked stays on the page, any other leads to the next
    if ((await button.getAttribute('aria-pressed')) === null) await onward(page, () => button.tap())
    else {
      await button.tap()
      await expect(button).toHaveAttribute('aria-pressed', 'true')
    }
    return words.trim()
  }
  await onward(page, () => page.getByRole('button', { name: 'I do not know' }).tap())
  return 'I do not know'
}

/** Does it, and waits for the page or the question after this one. */
export async function onward(page: Page, act: () => Promise<unknown>): Promise<void> {
  const before = (await page.locator('.kitchen').textContent()) ?? ''
  await act()
  await expect(page.locator('.kitchen')).not.toHaveText(before)
}

/** Opens the kitchen's view of the site on show, from the rep's page. */
export async function openKitchen(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Glass check' }).tap()
  await page.getByRole('link', { name: 'Open the kitchen’s view' }).tap()
  await expect(page.getByRole('heading', { level: 2, name: 'Why do the glasses spot?' })).toBeVisible()
}

/** The first pages, by touch: pictures by name, glasses only, all over the rack, over weeks, nothing else noticed. */
export async function firstPages(page: Page, pictures: readonly RegExp[], machine?: string): Promise<void> {
  await page
    .getByRole('button', { name: /^Start/u })
    .first()
    .tap()
  if (machine !== undefined) await page.getByRole('button', { name: machine }).tap()
  for (const name of pictures) await page.getByRole('button', { name }).tap()
  await page.getByRole('button', { name: 'That is all I see' }).tap()
  await page.getByRole('button', { name: 'Glasses', exact: true }).tap()
  await page.getByRole('button', { name: 'Next' }).tap()
  await page.getByRole('button', { name: 'All over the rack' }).tap()
  await page.getByRole('button', { name: 'It came on over weeks' }).tap()
  await onward(page, () => page.getByRole('button', { name: 'None of these' }).tap())
}

/** Answers tests until the result stands. Returns what was asked. */
export async function untilResult(page: Page, wanted: readonly RegExp[]): Promise<readonly string[]> {
  const asked: string[] = []
  for (let pages = 0; pages < 20; pages += 1) {
    if (!(await inTest(page))) return asked
    const { heading } = await standing(page)
    if (asked.at(-1) !== heading) asked.push(heading)
    await answer(page, wanted)
  }
  throw new Error('the check never came to a result')
}
