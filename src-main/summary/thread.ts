import { Worker } from 'node:worker_threads'
import type { DeskOptions } from './desk'
import { Region, type Desk } from './region'

export type DeskMethod = Exclude<keyof Desk, 'close'>
export interface Request {
  readonly number: number
  readonly method: DeskMethod
  readonly input: readonly unknown[]
}
export type Reply =
  { readonly number: number; readonly value: unknown } | { readonly number: number; readonly failed: string }

interface Waiting {
  readonly give: (value: unknown) => void
  readonly failed: (why: Error) => void
  readonly request: Request
}

/**
 * The desk on a thread of its own, started from the built `file`, so that nothing it does keeps a save or a screen
 * waiting. Should the thread not start or die, the desk goes on in this one.
 */
export function deskOnThread(options: Pick<DeskOptions, 'root'>, file: string, version: string): Desk {
  const waiting = new Map<number, Waiting>()
  let number = 0
  let here: Desk | null = null
  let closed = false
  const worker = new Worker(file, { workerData: { root: options.root, version } })
  worker.unref()
  worker.on('message', (reply: Reply) => {
    const one = waiting.get(reply.number)
    waiting.delete(reply.number)
    if ('failed' in reply) one?.failed(new Error(reply.failed))
    else one?.give(reply.value)
  })
  const fallBack = (): void => {
    if (closed || here !== null) return
    here = new Region({ ...options, program: version, now: () => new Date().toISOString() })
    for (const { request, give, failed } of waiting.values()) answer(here, request).then(give, failed)
    waiting.clear()
  }
  worker.on('error', fallBack)
  worker.on('exit', fallBack)

  const ask = <T>(method: DeskMethod, ...input: readonly unknown[]): Promise<T> => {
    number += 1
    const request: Request = { number, method, input }
    if (here !== null) return answer(here, request) as Promise<T>
    return new Promise<unknown>((give, failed) => {
      waiting.set(request.number, { give, failed, request })
      // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread has no origin
      worker.postMessage(request)
    }) as Promise<T>
  }
  return {
    list: () => ask('list'),
    outlooks: (ids, library) => ask('outlooks', ids, library),
    progress: (library) => ask('progress', library),
    view: (input) => ask('view', input),
    rows: (input) => ask('rows', input),
    sums: (input) => ask('sums', input),
    orders: (input) => ask('orders', input),
    table: (input) => ask('table', input),
    stop: () => ask('stop'),
    close: () => {
      closed = true
      here?.close()
      void worker.terminate()
    },
  }
}

/** Calls the method a request names. */
export const answer = (desk: Desk, { method, input }: Request): Promise<unknown> =>
  (desk[method] as (...input: readonly unknown[]) => Promise<unknown>)(...input)
