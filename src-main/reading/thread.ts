import { Worker } from 'node:worker_threads'
import type { Arrived, Reading } from '#core/contract/ports'
import { chain, fail, ok, type Outcome } from '#core/outcome'
import { readHere } from '#core/services/arrived'
import type { Answers, Job } from './job'
import { parseBody } from './parse-body'

export interface Request {
  readonly number: number
  readonly job: Job
}
export type Reply =
  | { readonly number: number; readonly value: Answers[Job['kind']] }
  | { readonly number: number; readonly failed: string }

/** What comes from outside, read where it keeps nobody waiting. */
export interface Reader extends Reading {
  /** the value of the body of a call of `method`, as `parseBody` */
  readonly parse: (bytes: Buffer, method: string) => Promise<Outcome<unknown>>
  readonly close: () => void
}

/** Reads everything at once, in this thread. */
export const readerHere = (): Reader => ({
  read: async (text) => readHere(text),
  stop: async () => {},
  parse: async (bytes) => parseBody(bytes),
  close: () => {},
})

/** A site of some 40 visits. Up to here reading takes a few milliseconds, and being handed to a thread hardly less. */
export const WORTH_A_THREAD = 500_000
const CARRY_FILES: ReadonlySet<string> = new Set(['site.compare', 'site.import'])
/** ms after the last file that the thread, and what memory it took, is let go of */
const IDLE = 5_000

interface Waiting {
  readonly job: Job
  readonly give: (value: never) => void
  readonly failed: (why: Error) => void
}

/**
 * Large files and bodies are read on a thread, started from the built `file` when the first one comes. Should it not
 * start or die, they are read in this one.
 */
export class ReaderOnThread implements Reader {
  readonly #root: string
  readonly #file: string
  #worker: Worker | null = null
  readonly #waiting = new Map<number, Waiting>()
  #number = 0
  /** files on the thread that are not done with */
  #files = new Set<number>()
  #rest: NodeJS.Timeout | null = null
  #broken = false

  constructor(root: string, file: string) {
    this.#root = root
    this.#file = file
  }

  read = async (text: string): Promise<Outcome<Arrived>> => {
    if (text.length < WORTH_A_THREAD || this.#broken) return readHere(text)
    const file = (this.#number += 1)
    this.#files.add(file)
    try {
      const head = await this.#ask({ kind: 'read', file, text })
      if (!head.ok) this.#letGo(file)
      return chain(head, (known) => ok(this.#arrived(file, text, known)))
    } catch (error) {
      this.#letGo(file)
      return error instanceof Stopped ? fail({ code: 'stopped' }) : readHere(text)
    }
  }

  stop = async (): Promise<void> => {
    const waiting = [...this.#waiting.values()]
    // a body may be the save of something else
    const others = waiting.filter(({ job }) => job.kind === 'body' && !job.carriesFile)
    if (this.#files.size === 0 && others.length === waiting.length) return
    this.#end()
    for (const one of waiting) if (!others.includes(one)) one.failed(new Stopped())
    for (const one of others) this.#send(one)
  }

  parse = async (bytes: Buffer, method: string): Promise<Outcome<unknown>> => {
    if (bytes.length < WORTH_A_THREAD || this.#broken) return parseBody(bytes)
    try {
      return await this.#ask({ kind: 'body', bytes, carriesFile: CARRY_FILES.has(method) })
    } catch (error) {
      return error instanceof Stopped ? fail({ code: 'stopped' }) : parseBody(bytes)
    }
  }

  close = (): void => {
    const waiting = [...this.#waiting.values()]
    this.#end()
    for (const { failed } of waiting) failed(new Stopped())
  }

  #arrived(
    file: number,
    text: string,
    head: Pick<Arrived, 'id' | 'name' | 'products' | 'instruments'>,
  ): Arrived {
    return {
      ...head,
      compare: (mine) =>
        this.#orHere(
          { file, text },
          () => this.#ask({ kind: 'compare', file, isHere: mine !== null }),
          (arrived) => arrived.compare(mine),
        ),
      settle: (mine, how) =>
        this.#orHere(
          { file, text },
          () => this.#ask({ kind: 'settle', file, isHere: mine !== null, how }),
          (arrived) => arrived.settle(mine, how),
        ),
      done: () => this.#letGo(file),
    }
  }

  /** What the thread cannot do, as after it has died, is done here with the text read anew. */
  async #orHere<T>(
    { file, text }: { readonly file: number; readonly text: string },
    there: () => Promise<Outcome<T>>,
    here: (arrived: Arrived) => Promise<Outcome<T>>,
  ): Promise<Outcome<T>> {
    if (!this.#files.has(file) && !this.#broken) return fail({ code: 'stopped' })
    try {
      if (!this.#broken) return await there()
    } catch (error) {
      if (error instanceof Stopped) return fail({ code: 'stopped' })
    }
    const again = readHere(text)
    return again.ok ? here(again.value) : again
  }

  #ask<K extends Job['kind']>(job: Extract<Job, { readonly kind: K }>): Promise<Answers[K]> {
    return new Promise((give, failed) => this.#send({ job, give, failed }))
  }

  #send(one: Waiting): void {
    if (this.#rest !== null) clearTimeout(this.#rest)
    this.#rest = null
    this.#number += 1
    const request: Request = { number: this.#number, job: one.job }
    this.#waiting.set(request.number, one)
    this.#worker ??= this.#start()
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread has no origin
    this.#worker.postMessage(request)
  }

  #start(): Worker {
    const worker = new Worker(this.#file, { workerData: { root: this.#root } })
    worker.unref()
    worker.on('message', (reply: Reply) => {
      const one = this.#waiting.get(reply.number)
      this.#waiting.delete(reply.number)
      if ('failed' in reply) one?.failed(new Error(reply.failed))
      else one?.give(reply.value as never)
      this.#maybeRest()
    })
    const died = (): void => {
      if (this.#worker !== worker) return
      this.#broken = true
      const waiting = [...this.#waiting.values()]
      this.#end()
      for (const { failed } of waiting) failed(new Error('the thread has gone'))
    }
    worker.on('error', died)
    worker.on('exit', died)
    return worker
  }

  #letGo(file: number): void {
    if (!this.#files.delete(file)) return
    if (this.#worker !== null) void this.#ask({ kind: 'done', file }).catch(() => null)
  }

  #maybeRest(): void {
    if (this.#waiting.size > 0 || this.#files.size > 0 || this.#rest !== null) return
    this.#rest = setTimeout(() => this.#end(), IDLE).unref()
  }

  #end(): void {
    const worker = this.#worker
    this.#worker = null
    if (this.#rest !== null) clearTimeout(this.#rest)
    this.#rest = null
    this.#waiting.clear()
    this.#files = new Set()
    void worker?.terminate()
  }
}

class Stopped extends Error {}
