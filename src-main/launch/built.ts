import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = fileURLToPath(new URL('../..', import.meta.url))

/** What a build is made from. Folders count too: their time changes when a file is added or taken away. */
const SOURCES = [
  'src-core',
  'src-main',
  'src-renderer',
  'assets/fonts',
  'assets/icons',
  'package.json',
  'package-lock.json',
  'electron.vite.config.ts',
  'tsconfig.json',
]
const RESULTS = [
  'out/main/electron.js',
  'out/main/local-host.js',
  'out/main/worksheet.js',
  'out/main/demo.js',
  'out/preload/preload.cjs',
  'out/renderer/index.html',
]

/** Whether every result of a build is there and younger than every source. */
export function isBuilt(root: string): boolean {
  const at = (path: string): number | null =>
    statSync(join(root, path), { throwIfNoEntry: false })?.mtimeMs ?? null
  const results = RESULTS.map(at)
  const oldest = Math.min(...results.map((time) => time ?? 0))
  return SOURCES.flatMap((source) => [source, ...below(root, source)]).every(
    (path) => (at(path) ?? 0) < oldest,
  )
}

function below(root: string, source: string): readonly string[] {
  if (statSync(join(root, source), { throwIfNoEntry: false })?.isDirectory() !== true) return []
  return readdirSync(join(root, source), { recursive: true, encoding: 'utf8' }).map((name) =>
    join(source, name),
  )
}

/** Builds when there is no build or the sources have changed since; gives the build's exit code. */
export function ensureBuilt(say: (line: string) => void): number {
  if (isBuilt(ROOT)) return 0
  const release = oneAtATime()
  try {
    return isBuilt(ROOT) ? 0 : build(say)
  } finally {
    release()
  }
}

function build(say: (line: string) => void): number {
  say('Building (some seconds, only after a change) ...')
  const started = Date.now()
  const done = spawnSync(process.execPath, [ELECTRON_VITE, 'build', '--logLevel', 'warn'], {
    cwd: ROOT,
    // straight through: a build that fails ends before a pipe has taken its words; standard output stays free
    stdio: ['ignore', 2, 2],
  })
  if (done.status !== 0) {
    say('The build failed; the lines above say where.')
    return done.status ?? 1
  }
  say(`Built in ${((Date.now() - started) / 1000).toFixed(1)} s.`)
  return 0
}

const LONGEST_BUILD = 180_000

/** Waits while another start is building into the same folder; gives the turn back. */
function oneAtATime(): () => void {
  const turn = join(ROOT, 'out', '.building')
  mkdirSync(join(ROOT, 'out'), { recursive: true })
  for (;;) {
    try {
      mkdirSync(turn)
      return () => rmSync(turn, { recursive: true, force: true })
    } catch {
      const since = statSync(turn, { throwIfNoEntry: false })?.mtimeMs ?? 0
      if (Date.now() - since > LONGEST_BUILD) rmSync(turn, { recursive: true, force: true })
      else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200)
    }
  }
}

const ELECTRON_VITE = join(ROOT, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js')
