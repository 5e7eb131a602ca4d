import type { Page } from '@playwright/test'

/** Waits until the history is at rest: the entry shown knows of as many dialogs as are open. A person is never quicker. */
export async function atRest(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      ((history.state as { readonly dialogs?: number } | null)?.dialogs ?? 0) ===
      document.querySelectorAll('dialog[open]').length,
  )
}
