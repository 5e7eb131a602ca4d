import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { sentence } from '#core/messages/sentence'
import type { Problem } from '#core/problem'
import { version } from '../../package.json'
import { compose } from '../compose'
import { EXIT, parseHostOptions, type HostOptions } from '../options'
import { readManifest } from '../static-files/manifest'
import { startLocalHost, type LocalHost } from './server'

// built as out/main/local-host.js; started by `npm start` or alone
const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..')

const log = (line: string): void => console.error(line)

function giveUp(problem: Problem, code: number): never {
  log(sentence(problem))
  process.exit(code)
}

async function main(): Promise<void> {
  const options = parseHostOptions(process.argv.slice(2))
  if (typeof options === 'string') {
    log(options)
    process.exit(EXIT.badOptions)
  }
  const { dataFolder, sharedFolder, withParent } = options
  const page = join(root, 'out', 'renderer')
  if (!existsSync(join(page, 'index.html')))
    giveUp({ code: 'unavailable', what: 'the page is not built; run npm run build' }, EXIT.failed)

  const program = compose({
    dataFolder,
    assets: join(root, 'assets'),
    summaryFile: join(root, 'out', 'main', 'summary.js'),
    readingFile: join(root, 'out', 'main', 'reading.js'),
    version,
    log,
    shared: { folder: sharedFolder, ask: null },
    host: {
      describe: () => ({ kind: 'local-window', version, savesPdf: false, dataFolder }),
      savePdf: null,
    },
  })
  if (!program.ok)
    giveUp(program.problem, program.problem.code === 'data-folder-in-use' ? EXIT.inUse : EXIT.failed)

  const manifest = readManifest(page)
  const host = await startLocalHost({
    dispatch: program.value.dispatch,
    parse: program.value.parse,
    files: () => manifest,
    log,
  })
  tell(host, options)

  // a save that is on its way in gets through before the data folder is given back
  const stop = (): void =>
    void host.close().then(() => {
      program.value.close()
      process.exit(0)
    })
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stop)
  const input = createInterface({ input: process.stdin })
  input.on('line', () => tell(host, options))
  if (withParent) input.on('close', stop)
}

/** The address, as a line for whoever reads: a person, or the program that opens the window. */
function tell(host: LocalHost, { json, dataFolder }: HostOptions): void {
  const address = host.startAddress()
  if (json) console.log(JSON.stringify({ address, origin: host.origin, processId: process.pid, dataFolder }))
  else console.log(`Open within a minute: ${address}\n(Enter: a new address. Ctrl+C: stop.)`)
}

await main()
