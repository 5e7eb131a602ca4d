import type { Site } from '../records'
import type { Finding } from './findings'
import { fromRecord } from './known-types'

/**
 * What kitchen staff say at a site, held against what its record says of a softener. Where there is none, nobody can
 * find its salt: an answer about it says nothing, and it is closed by the record, so that it is not asked.
 */
export const softenerHeard = (
  said: readonly Finding[],
  { water }: Pick<Site, 'water'>,
): readonly Finding[] =>
  water.softener === 'none'
    ? [
        ...said.filter(({ evidence }) => evidence !== 'softener-empty'),
        fromRecord('softener-empty', 'unknown'),
      ]
    : said
