import { spawn, spawnSync } from 'node:child_process'
import { parseArgs } from 'node:util'
import { EXIT, HOST_FLAGS, reasonOf } from '../options'
import { ensureBuilt, ROOT } from './built'
import { decide, FETCH_RUNTIME, findRuntime, lookAround, type Decision } from './desktop'
import { runLocalWindow } from './local-window'

const say = (line: string): void => console.log(line)

interface Wanted {
  readonly local: boolean
  readonly open: boolean
  /** options for the host itself */
  readonly forHost: readonly string[]
}

function readArguments(): Wanted {
  const { data, shared } = HOST_FLAGS
  try {
    const { values } = parseArgs({
      options: { data, shared, local: { type: 'boolean' }, 'no-open': { type: 'boolean' } },
    })
    return {
      local: values.local ?? false,
      open: !(values['no-open'] ?? false),
      forHost: [
        ...(values.data === undefined ? [] : [`--data=${values.data}`]),
        ...(values.shared === undefined ? [] : [`--shared=${values.shared}`]),
      ],
    }
  } catch (error) {
    console.error(`${reasonOf(error)}. Options: --data FOLDER, --shared FOLDER, --local, --no-open.`)
    process.exit(EXIT.badOptions)
  }
}

/** Fetches the Electron runtime once, where it can be had; what became of it is the reason for the window chosen. */
function settle(decision: Decision): Exclude<Decision, { kind: 'fetch' }> {
  if (decision.kind !== 'fetch') return decision
  say('Fetching the Electron runtime (once) ...')
  spawnSync(process.execPath, [FETCH_RUNTIME], { cwd: ROOT, stdio: 'ignore', timeout: 180_000 })
  const runtime = findRuntime()
  return runtime === null
    ? { kind: 'local', why: 'the Electron runtime is not here and could not be fetched' }
    : { kind: 'desktop', runtime }
}

function runDesktop(runtime: string, args: readonly string[]): Promise<number> {
  const child = spawn(runtime, [ROOT, ...args], { stdio: 'inherit' })
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => child.kill(signal))
  return new Promise((resolve) => child.once('exit', (code) => resolve(code ?? 1)))
}

/** npm's shell does not hand signals on: when it is gone, so is whoever started this. */
function stopWithParent(): void {
  const parent = process.ppid
  setInterval(() => {
    if (process.ppid !== parent) process.kill(process.pid, 'SIGTERM')
  }, 1_000).unref()
}

const wanted = readArguments()
const built = ensureBuilt(say)
if (built !== 0) process.exit(built)
stopWithParent()
const here = lookAround()
const decision = settle(decide(here, wanted.local))
if (decision.kind === 'desktop') {
  say('Opening the desktop window.')
  process.exit(await runDesktop(decision.runtime, wanted.forHost))
}
say(`Opening the local window: ${decision.why}.`)
const show = wanted.open && here.display && !here.isRoot
process.exit(await runLocalWindow(wanted.forHost, show, say))
