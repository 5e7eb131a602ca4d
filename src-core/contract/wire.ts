import { z } from 'zod'
import type { Change } from '../documents/changes'
import { id, instant, name } from '../documents/parts'

/** The parts the contract's schemas are made of. */
export const none = z.strictObject({}).readonly()
export const revision = z.int().min(0)
export const written = z.strictObject({ revision, savedAt: instant }).readonly()

const path = z
  .array(z.union([z.string().max(100), z.int().min(0)]))
  .max(40)
  .readonly()

export const change: z.ZodType<Change> = z.discriminatedUnion('op', [
  z.strictObject({ op: z.literal('set'), path, value: z.unknown() }).readonly(),
  z.strictObject({ op: z.literal('remove'), path }).readonly(),
])
export const changes = z.array(change).max(20_000).readonly()

/** A site as the list shows it. A damaged one is listed with what happened to it and never stops the others. */
export const siteRow = z.discriminatedUnion('state', [
  z
    .strictObject({
      state: z.literal('good'),
      id,
      name,
      machines: z.int(),
      pumps: z.int(),
      visits: z.int(),
      lastVisitAt: instant.nullable(),
      openVisitId: id.nullable(),
      changedAt: instant.nullable(),
    })
    .readonly(),
  z
    .strictObject({
      state: z.literal('damaged'),
      id: z.string(),
      /** as its last good version has it; null when there is none */
      name: name.nullable(),
      /** where the damaged file is kept, inside the data folder; null when there is none any more */
      setAside: z.string().nullable(),
      lastGoodAt: instant.nullable(),
    })
    .readonly(),
  z.strictObject({ state: z.literal('newer'), id: z.string(), version: z.int() }).readonly(),
])

const day = z.iso.date()

/** Sites of the list `from` to `from + count`; `version`: that of an answer before, empty for the newest. */
export const listAsk = z
  .strictObject({
    /** all of them stand in the name of each site found */
    words: z.string().max(500),
    /** says how names are ordered */
    locale: z.string().max(100),
    version: z.string().max(80),
    from: z.int().min(0),
    count: z.int().min(1).max(1000),
  })
  .readonly()

export const listView = z
  .strictObject({
    version: z.string(),
    /** all there are, those that cannot be read among them */
    sites: z.int(),
    readable: z.int(),
    /** files nobody has looked into yet; ask again, they are being read */
    waiting: z.int(),
    /** those found */
    total: z.int(),
    rows: z.array(siteRow).readonly(),
  })
  .readonly()

/** What a site looks like from a distance (`SiteOutlook`). */
export const outlook = z
  .strictObject({
    timeZone: z.string(),
    left: z
      .strictObject({ all: z.int(), out: z.int(), inside: z.int(), proved: z.int() })
      .readonly()
      .nullable(),
    nextVisitOn: day.nullable(),
    tubesOverOn: z.array(day).readonly(),
  })
  .readonly()

export const library = z.enum(['products', 'instruments', 'settings'])
/** A site's id, or the name of a library document. */
export const documentKey = z.union([library, id])

/** How many of each a site holds, to compare two versions of it. */
export const siteSummary = z
  .strictObject({
    name,
    machines: z.int(),
    pumps: z.int(),
    visits: z.int(),
    closedVisits: z.int(),
    lastVisitAt: instant.nullable(),
    stockEntries: z.int(),
  })
  .readonly()

/** One part in which two versions of a site differ, with what each has; only a person can say which is right. */
export const difference = z
  .strictObject({
    /** dotted path, as in problems */
    place: z.string(),
    what: z.enum([
      'site',
      'water',
      'calendar',
      'machine',
      'open-visit',
      'visit',
      'stock',
      'glass-check',
      'what-if',
      'kept-set-up',
    ]),
    name: z.string(),
    state: z.enum(['only-mine', 'only-theirs', 'differs']),
    /** the first places inside the part that differ, as dotted paths */
    changed: z.array(z.string()).readonly(),
    /** whether bringing the two together needs an answer for it */
    asks: z.boolean(),
  })
  .readonly()

export const comparison = z
  .strictObject({
    id,
    name,
    state: z.enum(['new', 'same', 'differs']),
    mine: siteSummary.nullable(),
    theirs: siteSummary,
    differences: z.array(difference).readonly(),
    /** products and instruments the file brings that are not here */
    products: z.int(),
    instruments: z.int(),
  })
  .readonly()

/** What to do with a site that is here already. `prefer` answers what a merge has to ask. */
export const choice = z.enum(['keep-mine', 'take-theirs', 'keep-both', 'merge'])
export const prefer = z.enum(['mine', 'theirs'])

export const imported = z.strictObject({ id, name, products: z.int(), instruments: z.int() }).readonly()
