import { chmodSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'

/** Where documents live when nobody says otherwise: the place each system keeps for the data of a program. */
export function defaultDataFolder(
  platform: NodeJS.Platform,
  home: string,
  env: Readonly<Record<string, string | undefined>>,
): string {
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Dosewright', 'Data')
  // not the roaming profile: it is copied between machines, which would carry the lock along
  if (platform === 'win32')
    return join(env['LOCALAPPDATA'] ?? join(home, 'AppData', 'Local'), 'Dosewright', 'Data')
  return join(env['XDG_DATA_HOME'] || join(home, '.local', 'share'), 'dosewright')
}

/** The folders inside the data folder; each holds one kind of thing. */
export const FOLDERS = [
  'sites',
  'library',
  'removed',
  'damaged',
  'older-versions',
  'backups',
  'index',
] as const
export type Folder = (typeof FOLDERS)[number]

/** Makes the data folder for this user alone (0700). */
export function prepareDataFolder(root: string): void {
  for (const folder of [root, ...FOLDERS.map((name) => join(root, name))]) {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    chmodSync(folder, 0o700)
  }
}

/** Half-written files of a run that was killed. Only the holder of the lock may call this. */
export function clearLeftovers(root: string): void {
  const names = readdirSync(root, { recursive: true, encoding: 'utf8' })
  for (const name of names) if (/\.tmp-[\da-f-]+$/.test(name)) rmSync(join(root, name), { force: true })
  for (const name of names) {
    if (!/^lock\.[\da-f-]{36}\.(?:stale\.)?json$/.test(name)) continue
    // a younger one may belong to a program that is just starting, and will be refused
    const stats = statSync(join(root, name), { throwIfNoEntry: false })
    if (stats !== undefined && Date.now() - stats.mtimeMs > 60_000) rmSync(join(root, name), { force: true })
  }
}
