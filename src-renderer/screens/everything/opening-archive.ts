import { openArchive, type Archive, type RemovedFile } from '#core/documents/archive'
import { fail, ok, type Outcome } from '#core/outcome'
import type { Problem } from '#core/problem'

/** What the thread tells of an archive. */
export type ArchiveReply =
  | { readonly kind: 'site'; readonly text: string; readonly of: number }
  | ({ readonly kind: 'removed'; readonly of: number } & RemovedFile)
  | { readonly kind: 'refused'; readonly problem: Problem }
  | { readonly kind: 'end'; readonly settings: string | null }

/** What an archive holds, read on a thread of its own, so that the window answers meanwhile. */
export class OpeningArchive {
  readonly contents: Promise<Outcome<Archive>>
  readonly #thread = new Worker(new URL('./archive-thread.ts', import.meta.url), { type: 'module' })
  readonly #sites: string[] = []
  readonly #removed: RemovedFile[] = []
  #settle: (outcome: Outcome<Archive>) => void = () => {}

  constructor(
    file: Blob,
    private readonly progress: (done: number, of: number) => void,
  ) {
    this.contents = new Promise((settle) => (this.#settle = settle))
    this.#thread.addEventListener('message', ({ data }: MessageEvent<ArchiveReply>) => this.#take(data))
    // a window that gets no thread reads it itself
    this.#thread.addEventListener('error', () => void this.#readHere(file))
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread has no origin
    this.#thread.postMessage(file)
  }

  /** Ends it at once: `stopped`. */
  stop(): void {
    this.#end(fail({ code: 'stopped' }))
  }

  #take(reply: ArchiveReply): void {
    if (reply.kind === 'refused') this.#end(fail(reply.problem))
    else if (reply.kind === 'end')
      this.#end(ok({ sites: this.#sites, removed: this.#removed, settings: reply.settings }))
    else {
      if (reply.kind === 'site') this.#sites.push(reply.text)
      else this.#removed.push({ removedAt: reply.removedAt, text: reply.text })
      this.progress(this.#sites.length + this.#removed.length, reply.of)
    }
  }

  async #readHere(file: Blob): Promise<void> {
    this.#end(openArchive(await file.text()))
  }

  #end(outcome: Outcome<Archive>): void {
    this.#thread.terminate()
    this.#settle(outcome)
  }
}
