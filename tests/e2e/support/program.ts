import { expect, test as base, type Page } from '@playwright/test'
import { moveClock } from '../../support/another-day.mjs'
import { dropFolder, startHost, type RunningHost } from './host'

/** see another-day.mjs */
const DAYS_AHEAD = Number(process.env['DOSEWRIGHT_DAYS_AHEAD'] ?? 0)

/**
 * A test that drives the built program: a host on a folder of its own, the page it opens, and three things no page may
 * do: ask another origin for anything, break the content policy, or throw.
 */
export const test = base.extend<{ readonly host: RunningHost; readonly program: Page }>({
  // eslint-disable-next-line no-empty-pattern -- the fixture needs nothing
  host: async ({}, use) => {
    const host = await startHost()
    await use(host)
    await host.stop()
    dropFolder(host.dataFolder)
  },
  page: async ({ page }, use) => {
    if (DAYS_AHEAD !== 0) await page.addInitScript(moveClock, DAYS_AHEAD * 86_400_000)
    await use(page)
  },
  program: async ({ page, host }, use) => {
    const wrongs = await watched(page, host.origin)
    await page.goto(await host.address())
    await use(page)
    expect(wrongs).toEqual([])
  },
})

export { expect }

/** Collects what must not happen while a page is open. */
export async function watched(page: Page, origin: string): Promise<string[]> {
  const wrongs: string[] = []
  page.on('request', (request) => {
    const url = request.url()
    if (!url.startsWith(`${origin}/`) && !/^(?:data|blob|about):/u.test(url)) wrongs.push(`asked for ${url}`)
  })
  page.on('websocket', (socket) => wrongs.push(`opened a socket to ${socket.url()}`))
  page.on('worker', (worker) => {
    // the one thread of the page; it lives under the same content policy, which its file carries
    if (!worker.url().startsWith(`${origin}/assets/archive-thread-`))
      wrongs.push(`started a worker of ${worker.url()}`)
  })
  page.on('pageerror', (error) => wrongs.push(`threw ${error.message}`))
  await page.exposeFunction('policyBroken', (what: string) =>
    wrongs.push(`broke the content policy: ${what}`),
  )
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const told = (globalThis as unknown as { policyBroken: (what: string) => void }).policyBroken
      told(`${event.violatedDirective} ${event.blockedURI} ${event.sample}`)
    })
  })
  return wrongs
}

const DEMO_SITES = 5

/** First start: adds the demo sites, and waits until the list has read all of them. */
export async function addDemoSites(page: Page): Promise<void> {
  await page.getByRole('button', { name: /demo sites/iu }).click()
  await expect(page.locator('main li a.name')).toHaveCount(DEMO_SITES)
}

/** First start: adds the demo sites and opens one by its name. */
export async function openDemoSite(page: Page, name: string): Promise<void> {
  await addDemoSites(page)
  await page.getByRole('link', { name }).click()
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible()
}
