import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type * as Electron from 'electron'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { METHODS, channelOf } from '#core/contract/methods'
import { answer, registerScheme } from '#main/electron/app-protocol'
import { menuTemplate } from '#main/electron/menu'
import { isOwnPage } from '#main/electron/origin'
import { denyNetwork, denyPermissions, hardenApp, isOwnRequest } from '#main/electron/security'
import { windowOptions } from '#main/electron/window-options'
import { SECURITY_HEADERS } from '#main/static-files/headers'
import { PAGE as PAGE_FILES } from '../local-host/running'
import { STATIC_PATHS } from '../static-paths'
import * as fake from './fake-electron'

vi.mock('electron', () => import('./fake-electron'))
const { refusalOf, serveCalls } = await import('#main/electron/ipc')
await import('#main/preload/preload')

// numbers as in Electron's own list, docs/tutorial/security.md
describe('the window (items 2, 3, 4, 6, 8 to 11)', () => {
  const options = windowOptions('/preload.cjs', null)
  it.each([
    ['nodeIntegration', false],
    ['nodeIntegrationInWorker', false],
    ['nodeIntegrationInSubFrames', false],
    ['contextIsolation', true],
    ['sandbox', true],
    ['webSecurity', true],
    ['allowRunningInsecureContent', false],
    ['experimentalFeatures', false],
    ['webviewTag', false],
    ['navigateOnDragDrop', false],
    ['safeDialogs', true],
  ] as const)('%s is written out as %s', (name, value) => {
    expect(options.webPreferences?.[name]).toBe(value)
  })

  it('turns on no Blink features and loads nothing but its preload script', () => {
    expect(options.webPreferences).not.toHaveProperty('enableBlinkFeatures')
    expect(options.webPreferences?.preload).toBe('/preload.cjs')
  })
})

describe('navigation and new windows (items 11 to 14)', () => {
  const contents = new fake.FakeContents()
  hardenApp(fake.app as unknown as Electron.App)
  fake.app.emit('web-contents-created', {}, contents)

  it('sandboxes every renderer there will be', () => {
    expect(fake.app.sandboxed).toBe(true)
  })

  const urls: readonly (readonly [string, boolean])[] = [
    ['app://dosewright/', true],
    ['app://dosewright/index.html#/site/x', true],
    ['app://dosewright', true],
    ['app://dosewright.evil.example/', false],
    ['app://evil.example/dosewright/', false],
    ['app://dosewright@evil.example/', false],
    ['app://user@dosewright/', false],
    ['app://dosewright:80/', false],
    ['apps://dosewright/', false],
    ['https://dosewright/', false],
    ['https://example.com/', false],
    ['http://127.0.0.1/', false],
    ['file:///etc/passwd', false],
    ['javascript:alert(1)', false],
    ['data:text/html,x', false],
    ['blob:app://dosewright/x', false],
    ['about:blank', false],
    ['', false],
    ['app:dosewright', false],
  ]

  it.each(urls)('%s stays inside: %s', (url, own) => {
    expect(isOwnPage(url)).toBe(own)
    for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate']) {
      const preventDefault = vi.fn()
      contents.emit(name, { url, preventDefault })
      expect([name, preventDefault.mock.calls.length]).toEqual([name, own ? 0 : 1])
    }
  })

  it('opens no window and attaches no webview, whatever the address', () => {
    const preventDefault = vi.fn()
    contents.emit('will-attach-webview', { preventDefault }, {}, {})
    expect(preventDefault).toHaveBeenCalledOnce()
    for (const [url] of urls)
      expect(contents.openHandler?.({ url } as Electron.HandlerDetails)).toEqual({ action: 'deny' })
  })
})

describe('permissions and requests (items 1 and 5)', () => {
  beforeEach(() => {
    denyPermissions(fake.session.defaultSession)
    denyNetwork(fake.session.defaultSession as unknown as Electron.Session)
  })

  it.each([
    'media',
    'geolocation',
    'notifications',
    'midi',
    'clipboard-read',
    'clipboard-sanitized-write',
    'fullscreen',
    'openExternal',
    'serial',
    'usb',
    'hid',
    'local-fonts',
    'unknown',
  ] as const)('%s is denied, asked for or looked up', (permission) => {
    const callback = vi.fn()
    fake.granted.request?.({} as Electron.WebContents, permission, callback, {} as Electron.PermissionRequest)
    expect(callback).toHaveBeenCalledExactlyOnceWith(false)
    expect(fake.granted.check?.(null, permission, 'app://dosewright', {} as never)).toBe(false)
  })

  it('no device is handed out', () => {
    expect(fake.granted.device?.({} as Electron.DevicePermissionHandlerHandlerDetails)).toBe(false)
  })

  it.each([
    ['app://dosewright/assets/main.js', false],
    ['data:image/png;base64,AA', false],
    ['data:text/html,x', true],
    ['https://example.com/', true],
    ['http://127.0.0.1:9/', true],
    ['ws://example.com/', true],
    ['file:///etc/passwd', true],
    ['app://other/', true],
    ['devtools://devtools/bundled/inspector.html', true],
  ])('a request for %s is stopped: %s', (url, stopped) => {
    expect(isOwnRequest(url)).toBe(!stopped)
    const callback = vi.fn()
    fake.granted.beforeRequest?.({ url } as Electron.OnBeforeRequestListenerDetails, callback)
    expect(callback).toHaveBeenCalledExactlyOnceWith({ cancel: stopped })
  })
})

describe('calls (item 17)', () => {
  const ours = new fake.FakeContents()
  const asked: unknown[] = []
  serveCalls(
    async (method, input) => {
      asked.push([method, input])
      return { ok: true, value: null }
    },
    (contents) => contents === (ours as unknown as Electron.WebContents),
  )
  const event = (
    changes: { sender?: fake.FakeContents; senderFrame?: object | null } = {},
  ): Electron.IpcMainInvokeEvent =>
    ({
      sender: ours,
      senderFrame: { url: 'app://dosewright/', parent: null },
      ...changes,
    }) as unknown as Electron.IpcMainInvokeEvent
  const gone = Object.assign(new fake.FakeContents(), { destroyed: true })

  it('have one channel per method and no other', () => {
    expect([...fake.handlers.keys()].toSorted()).toEqual(METHODS.map(channelOf).toSorted())
  })

  it('of our page reach the dispatcher with their input', async () => {
    await fake.handlers.get(channelOf('site.open'))?.(event(), { id: 'x' })
    expect(asked).toEqual([['site.open', { id: 'x' }]])
  })

  it.each([
    ['our own page', event(), null],
    ['another window', event({ sender: new fake.FakeContents() }), 'not a window of this program'],
    [
      'another page in our window',
      event({ senderFrame: { url: 'https://example.com/', parent: null } }),
      'not the page of this program',
    ],
    [
      'a page without an address',
      event({ senderFrame: { url: '', parent: null } }),
      'not the page of this program',
    ],
    [
      'a blank page',
      event({ senderFrame: { url: 'about:blank', parent: null } }),
      'not the page of this program',
    ],
    [
      'a frame inside our page',
      event({ senderFrame: { url: 'app://dosewright/', parent: {} } }),
      'not the top frame',
    ],
    ['a frame that has gone', event({ senderFrame: null }), 'the frame has gone'],
    ['a window that has gone', event({ sender: gone }), 'the window has gone'],
  ])('from %s: %s', (_who, sent, refusal) => {
    expect(refusalOf(sent, (contents) => [ours, gone].some((one) => (one as unknown) === contents))).toBe(
      refusal,
    )
    if (refusal === null) return
    for (const handler of fake.handlers.values()) expect(() => handler(sent, {})).toThrow(/^refused: /)
    expect(asked).toHaveLength(1)
  })
})

const ask = (url: string, method = 'GET'): Response => answer(PAGE_FILES, { url, method })

describe('the app: protocol (items 7 and 18)', () => {
  it('is registered as a standard, secure origin that cannot go round the policy', () => {
    registerScheme(fake.protocol)
    expect(fake.schemes).toEqual([
      {
        scheme: 'app',
        privileges: { standard: true, secure: true, bypassCSP: false, supportFetchAPI: true },
      },
    ])
  })

  it.each(STATIC_PATHS)('the file %s: %i', async (path, status) => {
    const response = ask(`app://dosewright${path.startsWith('/') ? '' : '/'}${path}`)
    // an absolute address as a path can only come as a path here, and no such file is listed
    const expected = path.startsWith('http') ? 404 : status
    expect(response.status === expected || (path.startsWith('http') && response.status === 400)).toBe(true)
    if (status !== 200) expect(await response.text()).not.toContain('title')
  })

  it('answers with the headers of the local window host', () => {
    for (const url of ['app://dosewright/', 'app://dosewright/nothing', 'app://dosewright/..'])
      for (const [name, value] of Object.entries(SECURITY_HEADERS))
        expect([url, name, ask(url).headers.get(name)]).toEqual([url, name, value])
  })

  it.each(['app://other/index.html', 'app://dosewright.evil/', 'https://dosewright/index.html', 'app://'])(
    '%s is not its address',
    (url) => {
      expect(ask(url).status).toBe(400)
    },
  )

  it.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('%s is not for files', (method) => {
    expect(ask('app://dosewright/', method).status).toBe(405)
  })

  it('sends the head alone when asked for the head', async () => {
    const response = ask('app://dosewright/', 'HEAD')
    expect([response.status, await response.text()]).toEqual([200, ''])
    expect(Number(response.headers.get('content-length'))).toBeGreaterThan(0)
  })
})

describe('the preload script (item 20)', () => {
  const bridge = fake.exposed.get('dosewright') as Readonly<Record<string, (...args: unknown[]) => unknown>>

  it('gives the page one frozen object with the methods of the contract and nothing else', () => {
    expect([...fake.exposed.keys()]).toEqual(['dosewright'])
    expect(Object.keys(bridge).toSorted()).toEqual([...METHODS].toSorted())
    expect(Object.isFrozen(bridge)).toBe(true)
    expect(Object.values(bridge).every((one) => typeof one === 'function')).toBe(true)
  })

  it('sends a call to its own channel with one input, whatever else the page passes', async () => {
    fake.invoked.length = 0
    expect(await bridge['site.open']?.({ id: 'x' }, 'more', 'things')).toEqual({ ok: true, value: 'answer' })
    expect(fake.invoked).toEqual([['dosewright:site.open', { id: 'x' }]])
  })
})

describe('the sources (items 1, 15 to 18)', () => {
  const root = fileURLToPath(new URL('../../../src-main', import.meta.url))
  const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => ({ name, text: readFileSync(join(root, name), 'utf8') }))

  const having = (pattern: RegExp): readonly string[] =>
    files.filter(({ text }) => pattern.test(text)).map(({ name }) => name)

  it('have one importer of ipcMain', () => {
    expect(having(/\bimport\b[^;]*\bipcMain\b/)).toEqual(['electron/ipc.ts'])
  })

  it('load no file: page, open nothing outside, and turn no protection off', () => {
    expect(having(/\bloadFile\b|['"`]file:/)).toEqual([])
    expect(having(/openExternal|openPath/)).toEqual([])
    expect(having(/webSecurity: false|sandbox: false|contextIsolation: false|nodeIntegration: true/)).toEqual(
      [],
    )
    // the report of the demo is printed by a browser without a window, which root may only start unsandboxed
    const hosts = having(/disable-web-security|no-sandbox|ignore-certificate/)
    expect(hosts.filter((name) => !name.startsWith('demo/'))).toEqual([])
  })

  it('open no connection of their own', () => {
    expect(having(/\bfetch\(|node:https|node:dns|node:dgram|node:http2|net\.connect|\bconnect\(/)).toEqual([
      // a script for the browser, while developing, that asks its own host
      'launch/live-reload.ts',
    ])
    expect(having(/from 'node:http'/)).toEqual(['local-host/body.ts', 'local-host/server.ts'])
    expect(having(/\brequest\(|httpRequest/)).toEqual([])
  })

  it('import electron in the Electron host and the preload script alone', () => {
    const importers = having(/from 'electron(?:-store)?'/)
    expect(importers.every((name) => /^(?:electron|preload)\//.test(name))).toBe(true)
    expect(having(/from 'electron-store'/)).toEqual(['electron/window-place.ts'])
  })

  it('offer no developer tools and no reload in the menu of any system', () => {
    for (const platform of ['darwin', 'linux', 'win32'] as const) {
      const text = JSON.stringify(menuTemplate(platform))
      expect(text).not.toMatch(/devtools|reload|viewMenu/i)
      expect(text).toContain('"paste"')
    }
  })
})
