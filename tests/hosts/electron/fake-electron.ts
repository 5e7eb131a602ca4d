import { EventEmitter } from 'node:events'
import type * as Electron from 'electron'

/**
 * A stand-in for the Electron modules, typed by Electron's own typings: what does not exist there does not compile here.
 * It records what it was asked and plays back the events a test sends.
 */
export type Handler = (event: Electron.IpcMainInvokeEvent, input: unknown) => unknown
export type RequestHandler = Parameters<Electron.Session['setPermissionRequestHandler']>[0]
export type CheckHandler = Parameters<Electron.Session['setPermissionCheckHandler']>[0]
export type DeviceHandler = Parameters<Electron.Session['setDevicePermissionHandler']>[0]
export type OpenHandler = Parameters<Electron.WebContents['setWindowOpenHandler']>[0]
export type BeforeRequest = NonNullable<Parameters<Electron.WebRequest['onBeforeRequest']>[0]>

export const happened: string[] = []

export class FakeContents extends EventEmitter {
  openHandler: OpenHandler | null = null
  destroyed = false
  readonly printed: Electron.PrintToPDFOptions[] = []
  setWindowOpenHandler(handler: OpenHandler): void {
    this.openHandler = handler
  }
  isDestroyed(): boolean {
    return this.destroyed
  }
  async printToPDF(options: Electron.PrintToPDFOptions): Promise<Buffer> {
    this.printed.push(options)
    return Buffer.from('%PDF-1.7 fake')
  }
}

export class FakeWindow extends EventEmitter {
  static readonly made: FakeWindow[] = []
  readonly webContents = new FakeContents()
  readonly loaded: string[] = []
  shown = false
  bounds: Electron.Rectangle = { x: 10, y: 20, width: 900, height: 700 }
  constructor(readonly options: Electron.BrowserWindowConstructorOptions) {
    super()
    happened.push('window')
    FakeWindow.made.push(this)
    app.emit('web-contents-created', {}, this.webContents)
  }
  async loadURL(url: string): Promise<void> {
    this.loaded.push(url)
  }
  show(): void {
    this.shown = true
  }
  getNormalBounds(): Electron.Rectangle {
    return this.bounds
  }
}

class FakeApp extends EventEmitter {
  isPackaged = false
  sandboxed = false
  exitCode: number | null = null
  quits = 0
  userData = ''
  enableSandbox(): void {
    this.sandboxed = true
    happened.push('sandbox')
  }
  async whenReady(): Promise<void> {
    happened.push('ready')
  }
  getVersion(): string {
    return '1.2.3'
  }
  getPath(_name: Parameters<Electron.App['getPath']>[0]): string {
    return this.userData
  }
  exit(code = 0): void {
    this.exitCode = code
  }
  quit(): void {
    this.quits += 1
    this.emit('will-quit', {})
  }
}
export const app = new FakeApp()

export const handlers = new Map<string, Handler>()
export const ipcMain: Pick<Electron.IpcMain, 'handle'> = {
  handle: (channel, listener) => {
    if (handlers.has(channel)) throw new Error(`a second handler for ${channel}`)
    handlers.set(channel, listener)
  },
}

export const schemes: Electron.CustomScheme[] = []
export const protocols = new Map<string, (request: Request) => Response | Promise<Response>>()
export const protocol: Pick<Electron.Protocol, 'registerSchemesAsPrivileged' | 'handle'> = {
  registerSchemesAsPrivileged: (list) => {
    happened.push('scheme')
    schemes.push(...list)
  },
  handle: (scheme, handler) => {
    protocols.set(scheme, handler as (request: Request) => Response | Promise<Response>)
  },
}

export const granted: {
  request: RequestHandler
  check: CheckHandler
  device: DeviceHandler
  beforeRequest: BeforeRequest | null
} = { request: null, check: null, device: null, beforeRequest: null }

const defaultSession: Pick<
  Electron.Session,
  'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'setDevicePermissionHandler'
> & { readonly webRequest: { readonly onBeforeRequest: (listener: BeforeRequest) => void } } = {
  setPermissionRequestHandler: (handler) => {
    granted.request = handler
  },
  setPermissionCheckHandler: (handler) => {
    granted.check = handler
  },
  setDevicePermissionHandler: (handler) => {
    granted.device = handler
  },
  webRequest: {
    onBeforeRequest: (listener) => {
      granted.beforeRequest = listener
    },
  },
}
export const session = { defaultSession }

export const errorBoxes: string[] = []
export const answers: { save: Electron.SaveDialogReturnValue; open: Electron.OpenDialogReturnValue } = {
  save: { canceled: true, filePath: '' },
  open: { canceled: true, filePaths: [] },
}
export const dialog = {
  showErrorBox: (_title: string, content: string): void => void errorBoxes.push(content),
  showSaveDialog: async (): Promise<Electron.SaveDialogReturnValue> => answers.save,
  showOpenDialog: async (): Promise<Electron.OpenDialogReturnValue> => answers.open,
}

export const Menu = {
  template: [] as Electron.MenuItemConstructorOptions[],
  buildFromTemplate: (template: Electron.MenuItemConstructorOptions[]): object => {
    Menu.template = template
    return {}
  },
  setApplicationMenu: (): void => void happened.push('menu'),
}
export const screen = {
  getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1040 } }],
}
export const BrowserWindow = FakeWindow

export const exposed = new Map<string, unknown>()
export const invoked: unknown[][] = []
export const contextBridge: Pick<Electron.ContextBridge, 'exposeInMainWorld'> = {
  exposeInMainWorld: (key, api) => void exposed.set(key, api),
}
/** What is behind the channels of the page; a test may put the other process there. */
export const wire: { send: (channel: string, input: unknown) => Promise<unknown> } = {
  send: async () => ({ ok: true, value: 'answer' }),
}
export const ipcRenderer: Pick<Electron.IpcRenderer, 'invoke'> = {
  invoke: async (...args: unknown[]) => {
    invoked.push(args)
    const [channel, input] = args
    return wire.send(String(channel), input)
  },
}
