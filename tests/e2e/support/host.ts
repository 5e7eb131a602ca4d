import { spawn, type ChildProcess } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { expect, test as base, type Page } from '@playwright/test'

// the folder that holds out/; another one can be named to test a build kept elsewhere
const root = process.env['DOSEWRIGHT_ROOT'] ?? fileURLToPath(new URL('../../..', import.meta.url))

/** One local window host on its own data folder: what `npm start` opens a window for. */
export class Host {
  #child: ChildProcess | null = null
  #addresses: ((address: string) => void)[] = []

  constructor(readonly dataFolder: string) {}

  /** Starts the host, or asks the running one for a fresh address. */
  async address(): Promise<string> {
    const next = new Promise<string>((resolve) => this.#addresses.push(resolve))
    if (this.#child === null) this.#start()
    else this.#child.stdin?.write('\n')
    return next
  }

  #start(): void {
    const program = join(root, 'out', 'main', 'local-host.js')
    const child = spawn(process.execPath, [program, '--data', this.dataFolder, '--json', '--with-parent'], {
      stdio: ['pipe', 'pipe', 'inherit'],
    })
    this.#child = child
    createInterface({ input: child.stdout }).on('line', (line) => {
      const told = JSON.parse(line) as { address: string }
      this.#addresses.shift()?.(told.address)
    })
  }

  /** Stops the host as closing the program does. */
  async stop(): Promise<void> {
    const child = this.#child
    this.#child = null
    if (child === null || child.exitCode !== null) return
    const gone = new Promise((resolve) => child.once('exit', resolve))
    child.kill('SIGTERM')
    await gone
  }
}

interface Fixtures {
  readonly host: Host
  /** the program's own page, with the demo sites in it */
  readonly demo: Page
}

export const test = base.extend<Fixtures>({
  // oxlint-disable-next-line no-empty-pattern -- Playwright reads the names from the pattern
  host: async ({}, use) => {
    const dataFolder = mkdtempSync(join(tmpdir(), 'dosewright-e2e-'))
    const host = new Host(dataFolder)
    await use(host)
    await host.stop()
    rmSync(dataFolder, { recursive: true, force: true })
  },
  demo: async ({ host, page }, use) => {
    await openDemo(host, page)
    await use(page)
  },
})

/** Opens the program and adds the demo sites the way a person does on the first day. */
export async function openDemo(host: Host, page: Page): Promise<void> {
  await page.goto(await host.address())
  await page.getByRole('button', { name: 'Look around with demo sites' }).click()
  await expect(page.getByRole('link', { name: 'Lantern Lane Cafe' })).toBeVisible()
}

/** Fails the test when the page meets a fault of its own, or asks anybody but its own host for anything. */
export function watchForFaults(page: Page): () => void {
  const faults: string[] = []
  page.on('pageerror', (error) => faults.push(String(error)))
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text())
  })
  page.on('request', (request) => {
    const { hostname, protocol } = new URL(request.url())
    if (!['127.0.0.1', 'localhost'].includes(hostname) && protocol !== 'data:' && protocol !== 'blob:')
      faults.push(`asked ${request.url()}`)
  })
  return () => expect(faults).toEqual([])
}

export { expect }
