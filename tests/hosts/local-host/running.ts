import type { Call } from '#core/contract/contract'
import type { Outcome } from '#core/outcome'
import { startLocalHost, type LocalHost, type LocalHostOptions } from '#main/local-host/server'
import type { Manifest } from '#main/static-files/manifest'
import { asCall, removeFolder, startProgram, tempFolder } from '../../contract/program'
import { ask } from './raw-request'

export const PAGE: Manifest = new Map([
  [
    '/index.html',
    { type: 'text/html; charset=utf-8', bytes: Buffer.from('<!doctype html><title>Page</title>') },
  ],
  // a page below a folder is no page of the folder
  ['/deep/index.html', { type: 'text/html; charset=utf-8', bytes: Buffer.from('<title>Deep</title>') }],
  ['/assets/main.js', { type: 'text/javascript; charset=utf-8', bytes: Buffer.from('export {}') }],
])

export interface Running {
  readonly host: LocalHost
  readonly origin: string
  readonly logged: string[]
  readonly token: string
  readonly folder: string
  readonly post: (path: string, body: unknown, token?: string | null) => ReturnType<typeof ask>
  readonly call: Call
  readonly raw: (method: string, input: unknown) => Promise<unknown>
  readonly stop: () => Promise<void>
}

/** The local window host with a program behind it on a fresh folder, and one session already begun. */
export async function run(
  changes: Partial<Pick<LocalHostOptions, 'dispatch' | 'now' | 'limits'>> = {},
): Promise<Running> {
  const folder = tempFolder()
  const { program } = startProgram(folder)
  const logged: string[] = []
  const host = await startLocalHost({
    dispatch: program.dispatch,
    files: () => PAGE,
    log: (line) => logged.push(line),
    ...changes,
  })
  const { origin } = host
  const post = (path: string, body: unknown, token: string | null = null) =>
    ask(origin, {
      method: 'POST',
      path,
      headers: {
        origin,
        'content-type': 'application/json',
        ...(token === null ? {} : { 'x-dosewright-token': token }),
      },
      body: typeof body === 'string' ? body : JSON.stringify(body),
    })
  const swapped = await post('/session', { code: codeOf(host.startAddress()) })
  const { token } = JSON.parse(swapped.body) as { readonly token: string }
  const raw = async (method: string, input: unknown): Promise<Outcome<unknown>> => {
    const reply = await post(`/rpc/${method}`, JSON.stringify(input) ?? 'null', token)
    return JSON.parse(reply.body) as Outcome<unknown>
  }
  return {
    host,
    origin,
    logged,
    token,
    folder,
    post,
    call: asCall(raw),
    raw,
    stop: async () => {
      await host.close()
      program.close()
      removeFolder(folder)
    },
  }
}

export const codeOf = (address: string): string => new URL(address).hash.replace('#start=', '')
