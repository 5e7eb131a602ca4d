import { CAUTIONS } from '#core/cautions/caution-table'

/** The title a caution was shown under; its id for one that is no longer in the table. */
export const cautionTitle = (id: string): string =>
  CAUTIONS.find((row) => row.id === id)?.title ?? id.replaceAll('-', ' ')
