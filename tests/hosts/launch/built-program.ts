import { spawn, type ChildProcess } from 'node:child_process'
import { cpSync, existsSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { ensureBuilt, isBuilt, ROOT } from '#main/launch/built'

export const OUT = join(ROOT, 'out')
let localHost = join(OUT, 'main', 'local-host.js')

/** The tests below open what was built; `npm test` builds first, a single run builds when need be. */
export function needBuild(): void {
  if (isBuilt(ROOT)) return
  if (ensureBuilt(console.error) !== 0 || !existsSync(localHost)) throw new Error('the build failed')
}

/** Goes on with a copy of the build, so that a long run is not disturbed by the next build or run. */
export function copyBuild(): void {
  const copy = join(ROOT, 'node_modules', '.cache', 'long-run', String(process.pid))
  const drop = (): void => rmSync(copy, { recursive: true, force: true })
  drop()
  process.once('exit', drop)
  cpSync(OUT, join(copy, 'out'), { recursive: true })
  localHost = join(copy, 'out', 'main', 'local-host.js')
}

export interface Started {
  readonly child: ChildProcess
  readonly address: string
  readonly origin: string
  /** exit code, or the signal that ended it */
  readonly ended: Promise<number | string | null>
  readonly errors: readonly string[]
}

/** Starts the built local window host as its own process and waits for its address. */
export async function startBuilt(dataFolder: string, args: readonly string[] = []): Promise<Started> {
  const child = spawn(process.execPath, [localHost, '--data', dataFolder, '--json', ...args], {
    stdio: ['pipe', 'pipe', 'pipe'],
  })
  const errors: string[] = []
  createInterface({ input: child.stderr }).on('line', (line) => errors.push(line))
  const ended = new Promise<number | string | null>((resolve) =>
    child.once('exit', (code, signal) => resolve(code ?? signal)),
  )
  const line = new Promise<string>((resolve) =>
    createInterface({ input: child.stdout }).once('line', resolve),
  )
  const first = await Promise.race([line, ended.then((code) => new Error(`${code}: ${errors.join('\n')}`))])
  if (first instanceof Error) throw first
  const { address, origin } = JSON.parse(first) as { readonly address: string; readonly origin: string }
  return { child, address, origin, ended, errors }
}
