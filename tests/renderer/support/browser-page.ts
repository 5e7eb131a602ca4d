import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { chromium, type Browser, type Page } from '@playwright/test'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { createServer, type ViteDevServer } from 'vite'

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

export interface BrowserPage {
  readonly page: Page
  readonly open: (query?: string) => Promise<void>
  readonly faults: readonly string[]
  readonly close: () => Promise<void>
}

/** A harness page of Svelte components in a real Chromium, served by Vite on a free port of this computer. */
export async function browserPage(harness: URL): Promise<BrowserPage> {
  const server: ViteDevServer = await createServer({
    root: fileURLToPath(harness),
    configFile: false,
    plugins: [svelte()],
    logLevel: 'error',
    server: { host: '127.0.0.1', port: 0, hmr: false, fs: { strict: false } },
  })
  await server.listen()
  const browser: Browser = await chromium.launch({ executablePath: chromiumPath(), args: FLAGS })
  const page = await browser.newPage({ viewport: { width: 900, height: 900 } })
  const faults: string[] = []
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text())
  })
  const address = server.resolvedUrls?.local[0] ?? ''
  return {
    page,
    faults,
    open: async (query = '') => {
      await page.goto(`${address}${query}`)
      await page.getByRole('heading', { level: 1 }).waitFor()
    },
    close: async () => {
      await browser.close()
      await server.close()
    },
  }
}

/** The Chromium that Playwright brought, or the one of the computer. */
const chromiumPath = (): string =>
  existsSync(chromium.executablePath()) ? chromium.executablePath() : '/usr/bin/chromium'
