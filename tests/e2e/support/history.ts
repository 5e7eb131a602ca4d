import { expect, type Page } from '@playwright/test'

/** Waits until the history is at rest: the entry shown knows of as many dialogs as are open. A person is never quicker. */
export async function atRest(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      ((history.state as { readonly dialogs?: number } | null)?.dialogs ?? 0) ===
      document.querySelectorAll('dialog[open]').length,
  )
}

/** Follows an address inside the program and waits until the screen that stood there has gone. */
export async function openAt(page: Page, hash: string): Promise<void> {
  // an address set by a script waits for no dialog's way out, as a pressed link does
  await atRest(page)
  const there = await page.evaluate((to) => {
    if (location.hash === to) return false
    for (const old of document.querySelectorAll('main > *')) old.setAttribute('data-left', '')
    location.hash = to
    return true
  }, hash)
  if (there) await expect(page.locator('main > [data-left]')).toHaveCount(0)
  await expect(page.locator('main h1').first()).toBeVisible()
}
