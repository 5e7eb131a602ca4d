import { FORMATS, type DocumentKind, type Documents } from './formats'
import { layOut } from './layout'
import { sureOf } from './sure'

/**
 * The text of a document: parts in the order of the schema whatever order they were set in, so that equal documents
 * are equal texts. The document is frozen by it: what was saved does not change any more.
 */
export function encode<K extends DocumentKind>(kind: K, document: Documents[K]): string {
  const { schema } = FORMATS[kind]
  const checked = sureOf(schema)(document) ? document : schema.parse(document)
  return `${layOut(checked, { frozen: true })}\n`
}
