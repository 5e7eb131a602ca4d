import { homedir } from 'node:os'
import { join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { build, type InlineConfig } from 'vite'
import { sentence } from '#core/messages/sentence'
import { compose } from '../compose'
import { startLocalHost } from '../local-host/server'
import { defaultDataFolder } from '../storage/data-folder'
import { readManifest, type Manifest } from '../static-files/manifest'
import config from '../../electron.vite.config'
import { ensureBuilt, ROOT } from './built'
import { withReload } from './live-reload'

// `npm run dev`: rebuilds the page at every change and reloads it. After a change of the host itself, start it again.
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

const { renderer } = config as { readonly renderer: InlineConfig }
const watcher = await build({
  ...renderer,
  configFile: false,
  base: './',
  logLevel: 'warn',
  build: { ...renderer.build, outDir: page, emptyOutDir: true, watch: {} },
})
if (!('on' in watcher)) throw new Error('vite did not watch')
watcher.on('event', (event) => {
  if (event.code === 'ERROR') console.error(event.error.message)
  if (event.code !== 'END') return
  builds += 1
  files = withReload(readManifest(page), builds)
  console.log(`Page built (${builds}).`)
})

const stop = (): void => {
  void watcher.close()
  program.value.close()
  void host.close().then(() => process.exit(0))
}
process.on('SIGINT', stop)
process.on('SIGTERM', stop)
