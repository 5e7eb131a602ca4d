import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { ROOT } from './built'

/** What decides between the two windows, looked up once so that the decision itself can be tested. */
export interface Surroundings {
  readonly platform: NodeJS.Platform
  readonly nodeVersion: string
  readonly runtime: string | null
  readonly display: boolean
  readonly isRoot: boolean
}

export type Decision =
  | { readonly kind: 'desktop'; readonly runtime: string }
  | { readonly kind: 'fetch' }
  | { readonly kind: 'local'; readonly why: string }

/** The desktop window wherever it can run; the local window with the reason everywhere else. */
export function decide(here: Surroundings, localWanted: boolean): Decision {
  if (localWanted) return { kind: 'local', why: 'as asked with --local' }
  if (!here.display) return { kind: 'local', why: 'there is no display for a desktop window' }
  if (here.isRoot) return { kind: 'local', why: 'the desktop window does not run as root' }
  if (here.runtime !== null) return { kind: 'desktop', runtime: here.runtime }
  // the package that fetches the runtime names this version as its lowest
  if (!atLeast(here.nodeVersion, 22, 12))
    return {
      kind: 'local',
      why: `the Electron runtime is not here, and fetching it takes Node 22.12 (this is ${here.nodeVersion})`,
    }
  return { kind: 'fetch' }
}

function atLeast(version: string, major: number, minor: number): boolean {
  const [a = 0, b = 0] = version.replace(/^v/, '').split('.').map(Number)
  return a > major || (a === major && b >= minor)
}

const ELECTRON = join(ROOT, 'node_modules', 'electron')
export const FETCH_RUNTIME = join(ELECTRON, 'install.js')

/** The Electron program where it is installed. Asking the package itself would start a download. */
export function findRuntime(): string | null {
  const pointer = join(ELECTRON, 'path.txt')
  if (!existsSync(pointer)) return null
  const program = join(ELECTRON, 'dist', readFileSync(pointer, 'utf8'))
  return existsSync(program) ? program : null
}

export const lookAround = (): Surroundings => ({
  platform: process.platform,
  nodeVersion: process.version,
  runtime: findRuntime(),
  display:
    process.platform !== 'linux' ||
    (process.env['DISPLAY'] ?? '') !== '' ||
    (process.env['WAYLAND_DISPLAY'] ?? '') !== '',
  isRoot: process.getuid?.() === 0,
})
