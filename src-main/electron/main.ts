import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { app, BrowserWindow, dialog, Menu, protocol, screen, session } from 'electron'
import { sentence } from '#core/messages/sentence'
import { compose } from '../compose'
import { EXIT, parseHostOptions } from '../options'
import { readManifest } from '../static-files/manifest'
import { registerScheme, serveApp } from './app-protocol'
import { serveCalls } from './ipc'
import { menuTemplate } from './menu'
import { PAGE } from './origin'
import { savePdf } from './save-pdf'
import { denyNetwork, denyPermissions, hardenApp } from './security'
import { windowOptions } from './window-options'
import { windowPlace } from './window-place'

// built as out/main/electron.js
const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..')

registerScheme(protocol)
hardenApp(app)

let window: BrowserWindow | null = null

function giveUp(why: string, code: number): void {
  console.error(why)
  dialog.showErrorBox('Dosewright', why)
  app.exit(code)
}

const ownArguments = (): readonly string[] => {
  const given = process.argv.slice(app.isPackaged ? 1 : 2)
  // Chromium's own switches share the command line
  return given.filter((argument) => /^--(?:data|shared)(?:=|$)/.test(argument) || !argument.startsWith('--'))
}

async function chooseFolder(): Promise<string | null> {
  const { canceled, filePaths } = await dialog.showOpenDialog({
    properties: ['openDirectory', 'createDirectory'],
  })
  return canceled ? null : (filePaths[0] ?? null)
}

async function start(): Promise<void> {
  const options = parseHostOptions(ownArguments())
  if (typeof options === 'string') return giveUp(options, EXIT.badOptions)
  const { dataFolder, sharedFolder } = options
  const program = compose({
    dataFolder,
    assets: join(root, 'assets'),
    summaryFile: join(root, 'out', 'main', 'summary.js'),
    readingFile: join(root, 'out', 'main', 'reading.js'),
    version: app.getVersion(),
    log: (line) => console.error(line),
    shared: { folder: sharedFolder, ask: chooseFolder },
    host: {
      describe: () => ({ kind: 'desktop', version: app.getVersion(), savesPdf: true, dataFolder }),
      savePdf: async (title, sheet) => {
        const shown = window
        if (shown === null) return { ok: false, problem: { code: 'host-gone' } }
        return savePdf(shown, (defaultPath) => dialog.showSaveDialog(shown, { defaultPath }), title, sheet)
      },
    },
  })
  if (!program.ok) {
    const inUse = program.problem.code === 'data-folder-in-use'
    return giveUp(sentence(program.problem), inUse ? EXIT.inUse : EXIT.failed)
  }
  app.on('will-quit', () => program.value.close())
  app.on('window-all-closed', () => app.quit())
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => app.quit())

  await app.whenReady()
  denyPermissions(session.defaultSession)
  denyNetwork(session.defaultSession)
  serveApp(protocol, readManifest(join(root, 'out', 'renderer')))
  serveCalls(program.value.dispatch, (contents) => contents === window?.webContents)
  Menu.setApplicationMenu(Menu.buildFromTemplate([...menuTemplate(process.platform)]))
  await openWindow()
}

async function openWindow(): Promise<void> {
  const place = windowPlace(app.getPath('userData'))
  const screens = screen.getAllDisplays().map((display) => display.workArea)
  const opened = new BrowserWindow(
    windowOptions(join(root, 'out', 'preload', 'preload.cjs'), place.last(screens)),
  )
  window = opened
  place.follow(opened)
  opened.once('ready-to-show', () => opened.show())
  opened.on('closed', () => {
    window = null
  })
  await opened.loadURL(PAGE)
}

void start()
