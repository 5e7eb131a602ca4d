import { spawn } from 'node:child_process'
import { existsSync, watch } from 'node:fs'
import { homedir } from 'node:os'
import { join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { sentence } from '#core/messages/sentence'
import { compose } from '../compose'
import { startLocalHost } from '../local-host/server'
import { defaultDataFolder } from '../storage/data-folder'
import { readManifest, type Manifest } from '../static-files/manifest'
import { ELECTRON_VITE, ensureBuilt, ROOT } from './built'
import { withReload } from './live-reload'

// `npm run dev`: rebuilds the page at every change and reloads it; tsx watches nothing, so restart after changes of the host
const { values } = parseArgs({ options: { data: { type: 'string' } } })
const usual = defaultDataFolder(process.platform, homedir(), process.env)
const dataFolder = resolve(values.data ?? `${usual}-dev`)

if (ensureBuilt(console.log) !== 0) process.exit(1)
const page = join(ROOT, 'out', 'renderer')
let files: Manifest = withReload(readManifest(page), 1)
let builds = 1

const program = compose({
  dataFolder,
  assets: join(ROOT, 'assets'),
  log: console.error,
  host: {
    describe: () => ({ kind: 'local-window', version: 'development', savesPdf: false, dataFolder }),
    savePdf: null,
  },
})
if (!program.ok) {
  console.error(sentence(program.problem))
  process.exit(3)
}
const host = await startLocalHost({
  dispatch: program.value.dispatch,
  files: () => files,
  log: console.error,
})
console.log(
  `Data folder: ${dataFolder}\nOpen within a minute: ${host.startAddress()}\n(Enter: a new address.)`,
)
process.stdin.on('data', () => console.log(host.startAddress()))

const build = spawn(process.execPath, [ELECTRON_VITE, 'build', '--watch', '--logLevel', 'warn'], {
  cwd: ROOT,
  stdio: ['ignore', 'inherit', 'inherit'],
})

let settled: NodeJS.Timeout | undefined
watch(join(ROOT, 'out'), { recursive: true }, (_event, name) => {
  if (!String(name).startsWith('renderer')) return
  clearTimeout(settled)
  settled = setTimeout(() => {
    if (!existsSync(join(page, 'index.html'))) return
    builds += 1
    files = withReload(readManifest(page), builds)
    console.log(`Page rebuilt (${builds}).`)
  }, 300)
})

const stop = (): void => {
  build.kill()
  program.value.close()
  void host.close().then(() => process.exit(0))
}
process.on('SIGINT', stop)
process.on('SIGTERM', stop)
