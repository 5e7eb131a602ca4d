import type { Browser, Page } from '@playwright/test'

/** What the page itself notes while it is measured. */
export interface Watched {
  keyTimes: number[]
  longTasks: number[]
}

/** A page of its own context that notes its long tasks. */
export async function newPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 } })
  const page = await context.newPage()
  // what the compiler of these scripts wraps named functions in
  await page.addInitScript('globalThis.__name = (named) => named')
  await page.addInitScript(() => {
    const w = globalThis as unknown as Watched
    w.longTasks = []
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) w.longTasks.push(entry.duration)
    }).observe({ type: 'longtask' })
  })
  return page
}
