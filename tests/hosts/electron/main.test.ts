import { existsSync, mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type * as Electron from 'electron'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { channelOf } from '#core/contract/methods'
import type { Outcome } from '#core/outcome'
import { takeDataLock } from '#main/storage/data-lock'
import { needBuild } from '../launch/built-program'
import { asCall, good, removeFolder, tempFolder } from '../../contract/program'
import { siteWithClosedVisit } from '../../contract/sample-site'
import * as fake from './fake-electron'

vi.mock('electron', () => import('./fake-electron'))
// electron-store is conf with a default folder taken from Electron; here the folder is given
vi.mock('electron-store', async () => {
  const { default: Conf } = await import('conf')
  return {
    default: class extends Conf {
      constructor({ name, ...options }: { readonly name: string; readonly cwd: string }) {
        super({ ...options, configName: name })
      }
    },
  }
})

const folder = tempFolder()
const data = join(folder, 'data')
const argv = process.argv
beforeAll(async () => {
  needBuild()
  fake.app.userData = join(folder, 'window')
  mkdirSync(fake.app.userData)
  process.argv = ['electron', '.', '--data', data, '--remote-debugging-port=0']
  await import('#main/electron/main')
  await vi.waitFor(() => expect(fake.FakeWindow.made[0]?.loaded).toHaveLength(1), 30_000)
})
afterAll(() => {
  process.argv = argv
  fake.app.quit()
  removeFolder(folder)
})

const window = (): fake.FakeWindow => {
  const [made] = fake.FakeWindow.made
  if (made === undefined) throw new Error('no window')
  return made
}
const raw = async (method: string, input: unknown): Promise<unknown> => {
  const event = {
    sender: window().webContents,
    senderFrame: { url: 'app://dosewright/', parent: null },
  } as unknown as Electron.IpcMainInvokeEvent
  // what crosses to the other process is cloned
  const handler = fake.handlers.get(channelOf(method as never))
  if (handler === undefined) return { ok: false, problem: { code: 'unknown-method', method } }
  return structuredClone(await handler(event, structuredClone(input)))
}
const call = asCall(raw as (method: string, input: unknown) => Promise<Outcome<unknown>>)

const now = (): string => new Date().toISOString()

describe('the desktop program', () => {
  it('registers its scheme and the sandbox before anything is ready, the window last', () => {
    expect(fake.happened).toEqual(['scheme', 'sandbox', 'ready', 'menu', 'window'])
  })

  it('shows our page in one window, once it is drawn', () => {
    expect(fake.FakeWindow.made).toHaveLength(1)
    expect(window().loaded).toEqual(['app://dosewright/'])
    expect(window().shown).toBe(false)
    window().emit('ready-to-show')
    expect(window().shown).toBe(true)
    expect(window().options.webPreferences?.preload).toMatch(/out[/\\]preload[/\\]preload\.cjs$/)
  })

  it('has every protection in place before its window: permissions, devices, requests, navigation, new windows', () => {
    const { request, check, device, beforeRequest } = fake.granted
    const given = vi.fn()
    request?.({} as Electron.WebContents, 'media', given, {} as Electron.PermissionRequest)
    beforeRequest?.({ url: 'https://example.com/' } as Electron.OnBeforeRequestListenerDetails, given)
    expect(given.mock.calls).toEqual([[false], [{ cancel: true }]])
    expect(check?.(null, 'media', 'app://dosewright', {} as never)).toBe(false)
    expect(device?.({} as Electron.DevicePermissionHandlerHandlerDetails)).toBe(false)
    const { webContents } = window()
    expect(webContents.openHandler?.({ url: 'app://dosewright/' } as Electron.HandlerDetails)).toEqual({
      action: 'deny',
    })
    for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate', 'will-attach-webview']) {
      const preventDefault = vi.fn()
      webContents.emit(name, { url: 'https://example.com/', preventDefault }, {}, {})
      expect([name, preventDefault.mock.calls.length]).toEqual([name, 1])
    }
  })

  it('serves the built page under its own scheme and no other', async () => {
    expect([...fake.protocols.keys()]).toEqual(['app'])
    const page = await fake.protocols.get('app')?.(new Request('app://dosewright/index.html'))
    expect(page?.status).toBe(200)
    expect(await page?.text()).toContain('<div id="app">')
  })

  it('refuses a call from a window it did not open', () => {
    const event = {
      sender: new fake.FakeContents(),
      senderFrame: { url: 'app://dosewright/', parent: null },
    } as unknown as Electron.IpcMainInvokeEvent
    for (const handler of fake.handlers.values())
      expect(() => handler(event, {})).toThrow('refused: not a window of this program')
  })

  it('answers over its channels with plain data that can be cloned to another process', async () => {
    expect(await good(call('host.describe', {}))).toEqual({
      kind: 'desktop',
      version: '1.2.3',
      savesPdf: true,
      dataFolder: data,
    })
    const made = siteWithClosedVisit().site
    await good(call('site.create', { site: made }))
    expect((await good(call('site.open', { id: made.id }))).site).toEqual(made)
  })

  it('saves the page it shows as a PDF where the person says, on the sheet asked for', async () => {
    expect(await good(call('report.savePdf', { title: 'Visit', sheet: 'A4' }))).toEqual({ saved: false })
    const filePath = join(folder, 'report.pdf')
    fake.answers.save = { canceled: false, filePath }
    expect(await good(call('report.savePdf', { title: 'Visit', sheet: 'Letter' }))).toEqual({ saved: true })
    expect(readFileSync(filePath, 'utf8')).toMatch(/^%PDF/)
    expect(window().webContents.printed.at(-1)).toMatchObject({ pageSize: 'Letter', printBackground: true })
    fake.answers.save = { canceled: false, filePath: join(folder, 'no', 'such', 'folder.pdf') }
    expect(await call('report.savePdf', { title: 'Visit', sheet: 'A4' })).toMatchObject({
      ok: false,
      problem: { code: 'not-saved' },
    })
  })

  it('lets the person choose the shared folder', async () => {
    expect(await good(call('shared.describe', {}))).toEqual({ folder: null, canChoose: true })
    expect(await good(call('shared.choose', {}))).toEqual({ folder: null })
    fake.answers.open = { canceled: false, filePaths: [folder] }
    expect(await good(call('shared.choose', {}))).toEqual({ folder })
  })

  it('keeps where the window stood, apart from the data', () => {
    window().emit('close')
    expect(JSON.parse(readFileSync(join(folder, 'window', 'window.json'), 'utf8'))).toEqual({
      place: window().bounds,
    })
    expect(existsSync(join(data, 'window.json'))).toBe(false)
  })

  it('holds the data folder until it quits', () => {
    expect(takeDataLock(data, now)).toMatchObject({ problem: { code: 'data-folder-in-use' } })
    fake.app.emit('window-all-closed')
    expect(fake.app.quits).toBe(1)
    const lock = takeDataLock(data, now)
    expect(lock.ok).toBe(true)
    if (lock.ok) lock.value.release()
  })
})
