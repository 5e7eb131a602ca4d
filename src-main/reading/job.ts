import { join } from 'node:path'
import type { Arrived, Settled, Settling, Weighed } from '#core/contract/ports'
import { decode } from '#core/documents/decode'
import { encode } from '#core/documents/encode'
import type { SiteFile } from '#core/documents/site-schema'
import { chain, ok, type Outcome } from '#core/outcome'
import type { Site } from '#core/records/index'
import { settle, weigh } from '#core/services/arrived'
import { placeOf } from '../storage/document-file'
import { readText } from '../storage/read-text'
import { parseBody } from './parse-body'

/** What the thread is asked for. `file` names what an earlier `read` left there. */
export type Job =
  | { readonly kind: 'body'; readonly bytes: Uint8Array; readonly carriesFile: boolean }
  | { readonly kind: 'read'; readonly file: number; readonly text: string }
  | { readonly kind: 'compare'; readonly file: number; readonly isHere: boolean }
  | { readonly kind: 'settle'; readonly file: number; readonly isHere: boolean; readonly how: Settling }
  | { readonly kind: 'done'; readonly file: number }

export type Head = Pick<Arrived, 'id' | 'name' | 'products' | 'instruments'>
export interface Answers {
  readonly body: Outcome<unknown>
  readonly read: Outcome<Head>
  readonly compare: Outcome<Weighed>
  readonly settle: Outcome<Settled>
  readonly done: null
}

/** What runs on the thread. Anything it cannot vouch for is thrown: the host then does it itself. */
export class Worker {
  readonly #files = new Map<number, SiteFile>()
  constructor(readonly root: string) {}

  answer(job: Job): Answers[Job['kind']] {
    switch (job.kind) {
      case 'body':
        return parseBody(Buffer.from(job.bytes.buffer, job.bytes.byteOffset, job.bytes.byteLength))
      case 'read':
        return chain(decode('site', job.text), ({ document }) => {
          this.#files.set(job.file, document)
          const { site, products, instruments } = document
          return ok({ id: site.id, name: site.name, products, instruments })
        })
      case 'compare':
        return ok(weigh(this.#file(job.file), this.#mine(job)))
      case 'settle':
        return chain(settle(this.#file(job.file), this.#mine(job), job.how), (settled) =>
          ok({
            ...settled,
            document: 'bytes' in settled.document ? settled.document : encoded(settled.document),
          }),
        )
      case 'done':
        this.#files.delete(job.file)
        return null
    }
  }

  #file(number: number): SiteFile {
    const file = this.#files.get(number)
    if (file === undefined) throw new Error('the file was let go of')
    return file
  }

  /** The site here, from its file: what the host has in memory is on disk before anybody is told that it is saved. */
  #mine(job: { readonly file: number; readonly isHere: boolean }): Site | null {
    if (!job.isHere) return null
    const { id } = this.#file(job.file).site
    const { root, folder, key } = placeOf(this.root, { kind: 'site', id })
    const text = readText(join(root, folder, `${key}.json`))
    const decoded = text?.ok === true ? decode('site', text.value) : null
    if (decoded?.ok !== true) throw new Error('the site here cannot be read')
    return decoded.value.document.site
  }
}

const encoded = (document: SiteFile): { readonly bytes: Uint8Array } => ({
  bytes: new TextEncoder().encode(encode('site', document)),
})
