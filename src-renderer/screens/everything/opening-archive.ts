import { filesOf } from '#core/documents/archive'
import { fail, ok, type Outcome } from '#core/outcome'
import type { Problem } from '#core/problem'

/** What the thread tells of an archive. */
export type ArchiveReply =
  | { readonly kind: 'file'; readonly text: string; readonly of: number }
  | { readonly kind: 'refused'; readonly problem: Problem }
  | { readonly kind: 'end' }

/** The site files of an archive, read on a thread of its own, so that the window answers meanwhile. */
export class OpeningArchive {
  readonly files: Promise<Outcome<readonly string[]>>
  readonly #thread = new Worker(new URL('./archive-thread.ts', import.meta.url), { type: 'module' })
  readonly #texts: string[] = []
  #settle: (outcome: Outcome<readonly string[]>) => void = () => {}

  constructor(
    file: Blob,
    private readonly progress: (done: number, of: number) => void,
  ) {
    this.files = new Promise((settle) => (this.#settle = settle))
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
    else if (reply.kind === 'end') this.#end(ok(this.#texts))
    else {
      this.#texts.push(reply.text)
      this.progress(this.#texts.length, reply.of)
    }
  }

  async #readHere(file: Blob): Promise<void> {
    this.#end(filesOf(await file.text()))
  }

  #end(outcome: Outcome<readonly string[]>): void {
    this.#thread.terminate()
    this.#settle(outcome)
  }
}
