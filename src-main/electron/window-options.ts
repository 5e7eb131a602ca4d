import type { BrowserWindowConstructorOptions, Rectangle } from 'electron'

export const SMALLEST = { width: 480, height: 520 } as const
const USUAL = { width: 1180, height: 820 } as const

/** Every security setting is written out, also those that are the default today. */
export const windowOptions = (
  preload: string,
  place: Partial<Rectangle> | null,
): BrowserWindowConstructorOptions => ({
  ...USUAL,
  ...place,
  minWidth: SMALLEST.width,
  minHeight: SMALLEST.height,
  title: 'Dosewright',
  show: false,
  backgroundColor: '#f6f7f5',
  autoHideMenuBar: false,
  webPreferences: {
    preload,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    navigateOnDragDrop: false,
    spellcheck: false,
    safeDialogs: true,
  },
})
