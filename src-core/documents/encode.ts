import { FORMATS, type DocumentKind, type Documents } from './formats'
import { layOutParts } from './layout'
import { sureOf } from './sure'

/**
 * The text of a document: parts in the order of the schema whatever order they were set in, so that equal documents
 * are equal texts. The document is frozen by it: what was saved does not change any more.
 */
export const encode = <K extends DocumentKind>(kind: K, document: Documents[K]): string =>
  encodeParts(kind, document).join('')

/** The same text in pieces. What did not change since the document was last encoded is the very same string again. */
export function encodeParts<K extends DocumentKind>(kind: K, document: Documents[K]): readonly string[] {
  const { schema } = FORMATS[kind]
  const checked = sureOf(schema)(document) ? document : schema.parse(document)
  return [...layOutParts(checked, { frozen: true }), '\n']
}
