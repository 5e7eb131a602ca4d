import { spawn, type ChildProcess } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { findBrowser, windowArguments } from './app-window'
import { ROOT } from './built'

interface Started {
  readonly address: string
  readonly dataFolder: string
}

/**
 * Starts the local window host and shows its page: in a window of an installed browser, or as an address to open by
 * hand. Gives the exit code when all is over.
 */
export function runLocalWindow(
  args: readonly string[],
  show: boolean,
  say: (line: string) => void,
): Promise<number> {
  const program = join(ROOT, 'out', 'main', 'local-host.js')
  const host = spawn(process.execPath, [program, ...args, '--json', '--with-parent'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const browser = show ? findBrowser(process.platform, process.env) : null
  let window: { readonly close: () => void } | null = null
  let told = false

  createInterface({ input: host.stdout }).on('line', (line) => {
    const started = JSON.parse(line) as Started
    if (!told) say(`Data folder: ${started.dataFolder}`)
    if (browser !== null && !told) window = openWindow(browser, started.address, () => stop())
    else say(`Open within a minute: ${started.address}`)
    if (!told)
      say(
        browser === null
          ? '(Enter: a new address. Ctrl+C: stop.)'
          : '(Close the window or press Ctrl+C to stop.)',
      )
    told = true
  })
  // Enter asks the host for a new address; the host's own input stays open for as long as this process lives
  if (process.stdin.isTTY) process.stdin.on('data', (chunk) => host.stdin.write(chunk))

  const stop = (): void => {
    host.kill('SIGTERM')
  }
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stop)
  return ended(host).then((code) => {
    window?.close()
    return code
  })
}

const ended = (child: ChildProcess): Promise<number> =>
  new Promise((resolve) => child.once('exit', (code) => resolve(code ?? 1)))

function openWindow(browser: string, address: string, onClosed: () => void): { readonly close: () => void } {
  const profile = mkdtempSync(join(tmpdir(), 'dosewright-window-'))
  const child = spawn(browser, [...windowArguments(address, profile)], { stdio: 'ignore' })
  child.once('error', onClosed)
  child.once('exit', () => {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
    onClosed()
  })
  return { close: () => child.kill() }
}
