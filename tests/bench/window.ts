import { readFileSync, rmSync } from 'node:fs'
import { chromium, type Browser, type Page } from '@playwright/test'
import { findChromium } from '../support/chromium'
import { LAUNCH_FLAGS } from '../e2e/support/flags'
import { newDataFolder, startHost } from '../e2e/support/host'
import { keyFigures, toldKeys, type KeyFigures } from './keys'
import { writeManySites } from './many-sites'
import { quantile, summary, type Timing } from './measure'
import { newPage, type Watched } from './page'

/**
 * The program in a real browser: from a key to the painted result, the portfolio of very many sites, how it scrolls,
 * and what memory it takes. Only what the page itself sees of time is counted.
 */
export interface WindowFigures {
  readonly keys: KeyFigures
  readonly portfolios: readonly Portfolio[]
}

export interface Portfolio {
  readonly sites: number
  /** from the data folder as it was copied to all rows worked out, s */
  readonly built: number
  /** from the click to the totals of all sites, index warm, page new, ms */
  readonly opened: Timing
  readonly listOpened: Timing
  readonly longest: number
  /** ms between frames while scrolling */
  readonly frames: Timing & { readonly p99: number }
  /** MB */
  readonly host: number
  readonly page: number
}

const OPENINGS = 7

export async function windowFigures(folders: readonly { readonly path: string; readonly sites: number }[]) {
  const executablePath = findChromium()
  const browser = await chromium.launch({
    args: [...LAUNCH_FLAGS, '--enable-precise-memory-info'],
    ...(executablePath === null ? {} : { executablePath }),
  })
  try {
    const keys = await keyFigures(browser)
    const portfolios: Portfolio[] = []
    for (const { path, sites } of folders) portfolios.push(await portfolioFigures(browser, path, sites))
    return { keys, portfolios }
  } finally {
    await browser.close()
  }
}

async function portfolioFigures(browser: Browser, root: string, sites: number): Promise<Portfolio> {
  const host = await startHost(root)
  try {
    const began = performance.now()
    const first = await newPage(browser)
    await first.goto(await host.address())
    await openPortfolio(first, sites, 3_600_000)
    const built = (performance.now() - began) / 1000
    await first.context().close()
    const opened: number[] = []
    const listed: number[] = []
    let last: Page | null = null
    for (let round = 0; round < OPENINGS; round += 1) {
      await last?.context().close()
      last = await newPage(browser)
      await last.goto(await host.address())
      await last.locator('li.site').first().waitFor()
      listed.push(await last.evaluate(() => performance.now()))
      opened.push(await openPortfolio(last, sites, 120_000))
    }
    const page = last as Page
    await page.waitForTimeout(500)
    const longest = await page.evaluate(() => Math.max(0, ...(globalThis as unknown as Watched).longTasks))
    const frames = await page.evaluate(scrolled)
    const memory = await page.context().newCDPSession(page)
    await memory.send('HeapProfiler.collectGarbage')
    const heap = await page.evaluate(
      () => (performance as unknown as { memory: { usedJSHeapSize: number } }).memory.usedJSHeapSize,
    )
    await page.context().close()
    return {
      sites,
      built,
      opened: summary(opened),
      listOpened: summary(listed),
      longest,
      frames: { ...summary(frames), p99: quantile(frames, 0.99) },
      host: residentMegabytes(host.processId),
      page: heap / 1e6,
    }
  } finally {
    await host.stop()
  }
}

/** ms from the click on Portfolio to the totals of all sites, as the page's own clock has it. */
async function openPortfolio(page: Page, sites: number, patience: number): Promise<number> {
  await page.getByRole('link', { name: 'Portfolio' }).waitFor()
  page.setDefaultTimeout(patience)
  return page.evaluate(
    ([heading]) =>
      new Promise<number>((done) => {
        const began = performance.now()
        const link = [...document.querySelectorAll('a')].find((one) => one.textContent.trim() === 'Portfolio')
        link?.click()
        const look = (): void => {
          const whole = document.querySelector('#all-month')?.textContent.trim() === heading
          const drawn = document.querySelector('#all-products') !== null
          if (whole && drawn)
            requestAnimationFrame(() => setTimeout(() => done(performance.now() - began), 0))
          else requestAnimationFrame(look)
        }
        look()
      }),
    [`An average month of ${sites} sites`],
  )
}

/** Runs in the page: scrolls the table by most of its height each frame and gives the times between frames. */
function scrolled(): Promise<number[]> {
  const box = document.querySelector('.scroller')
  return new Promise((done) => {
    const taken: number[] = []
    let last = performance.now()
    const step = (now: number): void => {
      if (taken.length > 0 || now > last) taken.push(now - last)
      last = now
      if (box === null || taken.length >= 300) done(taken.slice(5))
      else {
        box.scrollTop = (box.scrollTop + 500) % Math.max(1, box.scrollHeight - box.clientHeight)
        requestAnimationFrame(step)
      }
    }
    requestAnimationFrame(step)
  })
}

/** Memory a process holds, as Linux counts it; NaN elsewhere. */
function residentMegabytes(processId: number): number {
  try {
    const kilobytes = /VmRSS:\s*(\d+)/u.exec(readFileSync(`/proc/${processId}/status`, 'utf8'))?.[1]
    return Number(kilobytes) / 1000
  } catch {
    return Number.NaN
  }
}

const ms = (timing: Timing): string =>
  `${timing.median.toFixed(1)} ms [${timing.low.toFixed(1)}, ${timing.high.toFixed(1)}]`

export function toldWindow({ keys, portfolios }: WindowFigures): readonly string[] {
  const [small] = portfolios
  return [
    toldKeys(keys),
    ...portfolios.map(
      (one) =>
        `portfolio of ${one.sites} sites: first worked out in ${one.built.toFixed(1)} s; opened from the index in ${ms(one.opened)}` +
        `${small === undefined || small === one ? '' : `, ${(one.opened.median / small.opened.median).toFixed(1)} x that of ${small.sites} (goal 10)`}` +
        `; longest task ${one.longest.toFixed(0)} ms; list of sites usable after ${ms(one.listOpened)}; ` +
        `scrolling: ${(1000 / one.frames.median).toFixed(0)} frames a second, p99 ${one.frames.p99.toFixed(1)} ms between two; ` +
        `memory: host ${one.host.toFixed(0)} MB, page ${one.page.toFixed(0)} MB`,
    ),
  ]
}

/** Ten sites, and as many as are asked for. */
export async function measureWindow(sites: number): Promise<WindowFigures> {
  const folders = [10, sites].map((count) => ({ path: newDataFolder(), sites: count }))
  try {
    for (const { path, sites: count } of folders) writeManySites(path, count)
    return await windowFigures(folders)
  } finally {
    for (const { path } of folders) rmSync(path, { recursive: true, force: true })
  }
}
