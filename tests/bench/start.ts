import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium, type Browser } from '@playwright/test'
import { encode } from '#core/documents/encode'
import { findChromium } from '../support/chromium'
import { startHost } from '../e2e/support/host'
import { LAUNCH_FLAGS } from '../e2e/support/flags'
import { bigSite } from './big-site'
import { summary, type Timing } from './measure'

const program = fileURLToPath(new URL('../../out/main/local-host.js', import.meta.url))
const ROUNDS = 7

/** From the start of the built host to a list of sites one can use, ms, each part by itself. */
export interface Start {
  readonly sites: number
  readonly parts: Readonly<Record<'process' | 'modules' | 'data' | 'firstPaint' | 'usable', Timing>>
}

/** A data folder with sites of 24 visits. */
function folderOf(sites: number): string {
  const root = mkdtempSync(join(tmpdir(), 'dosewright-start-'))
  mkdirSync(join(root, 'sites'))
  for (let i = 0; i < sites; i += 1) {
    const file = bigSite(24, 3, i + 1)
    const text = encode('site', { ...file, products: [], instruments: [] })
    writeFileSync(join(root, 'sites', `${file.site.id}.json`), text)
  }
  return root
}

function run(args: readonly string[]): number {
  const began = performance.now()
  spawnSync(process.execPath, args)
  return performance.now() - began
}

/** The page from its address to the first paint and to the first site in the list, ms since it was asked for. */
async function page(
  browser: Browser,
  address: string,
): Promise<{ readonly painted: number; readonly usable: number }> {
  const context = await browser.newContext()
  try {
    const tab = await context.newPage()
    const began = performance.now()
    await tab.goto(address)
    await tab.locator('li.site').first().waitFor()
    const usable = performance.now() - began
    const painted = await tab.evaluate(
      () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0,
    )
    return { painted, usable }
  } finally {
    await context.close()
  }
}

export async function start(sites: number): Promise<Start> {
  const folder = folderOf(sites)
  const executablePath = findChromium()
  const browser = await chromium.launch({
    args: [...LAUNCH_FLAGS],
    ...(executablePath === null ? {} : { executablePath }),
  })
  const taken = {
    process: [] as number[],
    modules: [] as number[],
    data: [] as number[],
    firstPaint: [] as number[],
    usable: [] as number[],
  }
  try {
    for (let round = -1; round < ROUNDS; round += 1) {
      const empty = run(['-e', '0'])
      // an option nobody knows ends the program as soon as all of it is loaded
      const loaded = run([program, '--nonsense'])
      const began = performance.now()
      const host = await startHost(folder)
      const listening = performance.now() - began
      const { painted, usable } = await page(browser, await host.address())
      await host.stop()
      if (round < 0) continue
      taken.process.push(empty)
      taken.modules.push(loaded - empty)
      taken.data.push(Math.max(0, listening - loaded))
      taken.firstPaint.push(painted)
      taken.usable.push(usable)
    }
  } finally {
    await browser.close()
    rmSync(folder, { recursive: true, force: true })
  }
  return {
    sites,
    parts: {
      process: summary(taken.process),
      modules: summary(taken.modules),
      data: summary(taken.data),
      firstPaint: summary(taken.firstPaint),
      usable: summary(taken.usable),
    },
  }
}

export const toldStart = ({ sites, parts }: Start): string =>
  `start with ${sites} sites: Node ${parts.process.median.toFixed(0)} ms, modules ${parts.modules.median.toFixed(0)} ms, ` +
  `data folder ${parts.data.median.toFixed(0)} ms; then the page: first paint ${parts.firstPaint.median.toFixed(0)} ms, ` +
  `list usable ${parts.usable.median.toFixed(0)} ms after it was asked for`
