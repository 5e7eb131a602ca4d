import { FORMATS, type DocumentKind, type Documents } from './formats'
import { layOut } from './layout'

/**
 * The text of a document: parts in the order of the schema whatever order they were set in, so that equal documents
 * are equal texts.
 */
export const encode = <K extends DocumentKind>(kind: K, document: Documents[K]): string =>
  `${layOut(FORMATS[kind].schema.parse(document))}\n`
