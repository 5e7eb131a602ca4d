import type { Decoded } from '#core/documents/decode'
import { decode } from '#core/documents/decode'
import { encodeParts } from '#core/documents/encode'
import { FORMATS, type DocumentKind, type Documents } from '#core/documents/formats'
import type { SiteFile } from '#core/documents/site-schema'
import { chain, fail, ok, type Outcome } from '#core/outcome'

/** How one kind of document becomes text and back, and the version it is written in. */
export interface Codec<T> {
  readonly version: number
  readonly decode: (text: string) => Outcome<Decoded<T>>
  /** the text in pieces, those of unchanged parts the same strings as before */
  readonly encode: (document: T) => readonly string[]
}

export type Codecs = { readonly [K in DocumentKind]: Codec<Documents[K]> }

const codec = <K extends DocumentKind>(kind: K): Codec<Documents[K]> => ({
  version: FORMATS[kind].version,
  decode: (text) => decode(kind, text),
  encode: (document) => encodeParts(kind, document),
})

export const CODECS: Codecs = {
  site: codec('site'),
  products: codec('products'),
  instruments: codec('instruments'),
  settings: codec('settings'),
}

/** A site must lie under its own id: a copy of one site under another's name would stand for both. */
export const underOwnId = (codec: Codec<SiteFile>, key: string): Codec<SiteFile> => ({
  ...codec,
  decode: (text) =>
    chain(codec.decode(text), (decoded) =>
      decoded.document.site.id.toLowerCase() === key
        ? ok(decoded)
        : fail({
            code: 'document-malformed',
            place: 'site.id',
            reason: 'is not the id in the name of the file',
          }),
    ),
})
