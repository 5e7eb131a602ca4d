import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Call, Method, Output } from '#core/contract/contract'
import type { Outcome } from '#core/outcome'
import { compose, type Program, type ProgramOptions } from '#main/compose'

export const ASSETS = fileURLToPath(new URL('../../assets', import.meta.url))

export const tempFolder = (): string => mkdtempSync(join(tmpdir(), 'dosewright-'))
export const removeFolder = (path: string): void => rmSync(path, { recursive: true, force: true })

/** The program on a real folder, without a window. */
export function startProgram(
  dataFolder: string,
  changes: Partial<ProgramOptions> = {},
): { readonly call: Call; readonly program: Program; readonly logged: readonly string[] } {
  const logged: string[] = []
  const composed = compose({
    dataFolder,
    assets: ASSETS,
    log: (line) => logged.push(line),
    host: {
      describe: () => ({ kind: 'local-window', version: '0.0.0', savesPdf: false, dataFolder }),
      savePdf: null,
    },
    ...changes,
  })
  if (!composed.ok) throw new Error(JSON.stringify(composed.problem))
  return { program: composed.value, call: asCall(composed.value.dispatch), logged }
}

export const asCall = (dispatch: (method: Method, input: unknown) => Promise<Outcome<unknown>>): Call =>
  dispatch as Call

/** The value of an outcome that must be good. */
export async function good<T>(outcome: Outcome<T> | Promise<Outcome<T>>): Promise<T> {
  const settled = await outcome
  if (!settled.ok) throw new Error(JSON.stringify(settled.problem))
  return settled.value
}

/** The rows of all sites: on a busy machine some files are still being read when the first answer comes. */
export async function listed(call: Call): Promise<Output<'sites.list'>['sites']> {
  for (;;) {
    const { sites, waiting } = await good(call('sites.list', {}))
    if (waiting === 0) return sites
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
}
