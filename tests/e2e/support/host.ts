import { spawn } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'

// the folder that holds out/; another one can be named to test a build kept elsewhere
const root = process.env['DOSEWRIGHT_ROOT'] ?? fileURLToPath(new URL('../../..', import.meta.url))

/** A local window host that runs on a data folder of its own: what `npm start` opens a window for. */
export interface RunningHost {
  readonly origin: string
  readonly dataFolder: string
  readonly processId: number
  /** a fresh address to open, good once */
  readonly address: () => Promise<string>
  /** stops the host as closing the program does */
  readonly stop: () => Promise<void>
  /** ends the host as a power cut does */
  readonly kill: () => Promise<void>
}

interface Told {
  readonly address: string
  readonly origin: string
  readonly processId: number
}

/** Starts the built program; on a folder of an earlier start, to see what a restart keeps. */
export async function startHost(
  dataFolder = newDataFolder(),
  more: readonly string[] = [],
): Promise<RunningHost> {
  const program = join(root, 'out', 'main', 'local-host.js')
  const child = spawn(process.execPath, [program, '--data', dataFolder, '--json', '--with-parent', ...more], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const waiting: { readonly told: (told: Told) => void; readonly failed: (why: Error) => void }[] = []
  const next = (): Promise<Told> =>
    new Promise((told, failed) => {
      waiting.push({ told, failed })
    })
  createInterface({ input: child.stdout }).on('line', (line) =>
    waiting.shift()?.told(JSON.parse(line) as Told),
  )
  const gone = new Promise<void>((resolve) => {
    child.once('exit', (code) => {
      for (const one of waiting) one.failed(new Error(`the host ended with code ${code ?? 'none'}`))
      resolve()
    })
  })
  let first: Told | null = await next()
  const { origin, processId } = first
  return {
    origin,
    dataFolder,
    processId,
    address: async () => {
      const told = first
      first = null
      if (told !== null) return told.address
      const asked = next()
      child.stdin.write('\n')
      return (await asked).address
    },
    stop: async () => {
      child.kill('SIGTERM')
      await gone
    },
    kill: async () => {
      child.kill('SIGKILL')
      await gone
    },
  }
}

/** A site as its file has it, with the few entries tests look at. */
export interface SiteOnDisk {
  readonly name: string
  readonly visits: readonly unknown[]
  readonly visitEveryDays: string | null
  readonly calendar: { readonly daysPerWeek: string }
  readonly machines: readonly { readonly racksPerDay: string | null }[]
}

export function siteOnDisk(dataFolder: string, name: string): SiteOnDisk {
  const folder = join(dataFolder, 'sites')
  const found = readdirSync(folder)
    .filter((file) => /^[\da-f-]{36}\.json$/u.test(file))
    .map((file) => JSON.parse(readFileSync(join(folder, file), 'utf8')) as { readonly site: SiteOnDisk })
    .find(({ site }) => site.name === name)
  if (found === undefined) throw new Error(`${name} is not on disk`)
  return found.site
}

export const newDataFolder = (): string => mkdtempSync(join(tmpdir(), 'dosewright-e2e-'))
export const dropFolder = (folder: string): void => rmSync(folder, { recursive: true, force: true })
