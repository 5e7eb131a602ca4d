import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** Browsers that can show one page as a window of its own, by the names they are installed under. */
const COMMANDS = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
  'brave-browser',
  'vivaldi',
]

const WINDOWS = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
]

const MAC = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
]

/** A browser of the Chromium family on this machine, or null. */
export function findBrowser(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
  exists: (path: string) => boolean = existsSync,
): string | null {
  const candidates =
    platform === 'darwin'
      ? MAC
      : platform === 'win32'
        ? ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) =>
            WINDOWS.map((parts) => join(env[name] ?? '', ...parts)),
          )
        : (env['PATH'] ?? '').split(delimiter).flatMap((folder) => COMMANDS.map((name) => join(folder, name)))
  // by preference of the list, not by order of the path
  const ranked =
    platform === 'linux'
      ? COMMANDS.flatMap((name) => candidates.filter((path) => path.endsWith(`/${name}`)))
      : candidates
  return ranked.find((path) => exists(path)) ?? null
}

/**
 * A window with nothing of the person's own browser in it: no extensions that could read the page, no history, no
 * accounts, and it ends when the window is closed.
 */
export const windowArguments = (address: string, profile: string): readonly string[] => [
  `--app=${address}`,
  `--user-data-dir=${profile}`,
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-extensions',
  '--disable-sync',
  '--disable-background-networking',
  '--disable-component-update',
  '--window-size=1180,820',
]
