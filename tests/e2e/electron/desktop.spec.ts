import { mkdtempSync, rmSync, existsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { _electron, expect, test, type ElectronApplication, type Page } from '@playwright/test'
import { METHODS } from '#core/contract/methods'

// The rows of Electron's security list that only a running window can answer. Needs the Electron runtime; where it is
// absent, npm test says that this project was not run.
const root = fileURLToPath(new URL('../../..', import.meta.url))

let app: ElectronApplication
let page: Page
let folder = ''

test.beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'dosewright-desktop-'))
  app = await _electron.launch({
    args: [root, `--data=${join(folder, 'data')}`, `--user-data-dir=${join(folder, 'window')}`],
  })
  page = await app.firstWindow()
  await page.getByRole('heading', { level: 1 }).first().waitFor()
})
test.afterEach(async () => {
  await app.close()
  rmSync(folder, { recursive: true, force: true })
})

test('the page has no Node and sees nothing of the preload script but its calls (2, 3, 20)', async () => {
  expect(
    await page.evaluate(() => [
      typeof globalThis.require,
      typeof globalThis.process,
      typeof globalThis.module,
    ]),
  ).toEqual(['undefined', 'undefined', 'undefined'])
  const bridge = await page.evaluate(() => {
    const given = (globalThis as unknown as { readonly dosewright: object }).dosewright
    return { names: Object.keys(given), frozen: Object.isFrozen(given) }
  })
  expect(bridge.names.toSorted()).toEqual([...METHODS].toSorted())
  expect(bridge.frozen).toBe(true)
})

test('every permission is denied (5)', async () => {
  expect(await page.evaluate(() => Notification.requestPermission())).toBe('denied')
  expect(
    await page.evaluate(() =>
      navigator.mediaDevices.getUserMedia({ audio: true }).then(
        () => 'given',
        (error: DOMException) => error.name,
      ),
    ),
  ).toBe('NotAllowedError')
})

test('nothing inline runs, and nothing is fetched from outside (1, 7)', async () => {
  const requests: string[] = []
  page.on('request', (request) => requests.push(request.url()))
  const ran = await page.evaluate(async () => {
    const script = document.createElement('script')
    script.textContent = 'globalThis.injected = true'
    document.head.append(script)
    const reached = await fetch('https://example.com/').then(
      () => true,
      () => false,
    )
    return [(globalThis as unknown as { injected?: boolean }).injected ?? false, reached]
  })
  expect(ran).toEqual([false, false])
  await page.reload()
  expect(
    requests.filter((url) => !url.startsWith('app://dosewright/') && !url.startsWith('https://example.com')),
  ).toEqual([])
})

test('it stays on its own page and opens no window (13, 14)', async () => {
  await page.evaluate(() => {
    location.href = 'https://example.com/'
  })
  await page.waitForTimeout(500)
  expect(page.url()).toMatch(/^app:\/\/dosewright\//)
  expect(await page.evaluate(() => window.open('https://example.com/') === null)).toBe(true)
  expect(app.windows()).toHaveLength(1)
})

test('a call goes through the bridge, and its site is there after a restart', async () => {
  const listed = await page.evaluate(async () => {
    const bridge = (
      globalThis as unknown as { dosewright: Record<string, (input: object) => Promise<object>> }
    ).dosewright
    await bridge['demo.add']?.({})
    return bridge['sites.list']?.({})
  })
  expect(listed).toMatchObject({ ok: true })
  await app.close()
  expect(existsSync(join(folder, 'data', 'lock.json'))).toBe(false)
  app = await _electron.launch({
    args: [root, `--data=${join(folder, 'data')}`, `--user-data-dir=${join(folder, 'window')}`],
  })
  page = await app.firstWindow()
  await expect(page.getByRole('link').first()).toBeVisible()
})

test('the window comes back where it stood', async () => {
  await app.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows()[0]?.setBounds({ x: 40, y: 40, width: 900, height: 700 }),
  )
  await app.close()
  app = await _electron.launch({
    args: [root, `--data=${join(folder, 'data')}`, `--user-data-dir=${join(folder, 'window')}`],
  })
  await app.firstWindow()
  const bounds = await app.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows()[0]?.getNormalBounds(),
  )
  expect(bounds).toMatchObject({ width: 900, height: 700 })
})
