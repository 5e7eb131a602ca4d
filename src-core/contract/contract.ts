import { z } from 'zod'
import type { Outcome } from '../outcome'
import { instrument, product, settings } from '../documents/library-schema'
import { id, instant, name } from '../documents/parts'
import { site } from '../documents/site-schema'
import type { Method } from './methods'
import {
  orders,
  ordersAsk,
  progress,
  rowsSlice,
  slice,
  sums,
  sumsAsk,
  table,
  tableAsk,
  viewOf,
} from './portfolio-wire'
import {
  changes,
  choice,
  comparison,
  difference,
  documentKey,
  imported,
  library,
  listAsk,
  listView,
  none,
  outlook,
  prefer,
  revision,
  siteRow,
  siteSummary,
  written,
} from './wire'

export { METHODS, type Method } from './methods'

/**
 * Every call a screen can make: name, what goes in, what comes out. Types, channels, parsing and tests of both hosts
 * are derived from this object.
 */
export const contract = {
  'host.describe': {
    input: none,
    output: z
      .strictObject({
        kind: z.enum(['desktop', 'local-window']),
        version: z.string(),
        savesPdf: z.boolean(),
        dataFolder: z.string(),
      })
      .readonly(),
  },
  'sites.list': {
    input: none,
    /** `waiting`: files nobody has looked into yet; ask again, they are being read */
    output: z.strictObject({ sites: z.array(siteRow).readonly(), waiting: z.int() }).readonly(),
  },
  /** The sites found by name, those first that want somebody, a slice at a time. */
  'sites.view': { input: listAsk, output: listView },
  /** What the sites named look like; one that cannot be read is left out. */
  'sites.outlooks': {
    input: z.strictObject({ ids: z.array(id).max(100).readonly() }).readonly(),
    output: z
      .strictObject({ outlooks: z.array(z.strictObject({ id, outlook }).readonly()).readonly() })
      .readonly(),
  },
  /** What `site.restore` can bring back, newest first. */
  'sites.removed': {
    input: none,
    output: z
      .strictObject({
        sites: z.array(z.strictObject({ id, name, removedAt: instant }).readonly()).readonly(),
      })
      .readonly(),
  },
  /** How far the rows of all sites are; `begin` looks at all files, the library and the day anew. */
  'portfolio.progress': {
    input: z.strictObject({ begin: z.boolean() }).readonly(),
    output: progress,
  },
  /**
   * What each site uses and costs: those that pass a filter, in an order, as totals and a slice of rows. More rows, sums
   * and files of the same view are asked for with the `version` it answered with, and hold for the same rows.
   */
  'portfolio.view': { input: slice, output: viewOf },
  'portfolio.rows': { input: slice, output: rowsSlice },
  'portfolio.sums': { input: sumsAsk, output: sums },
  /** The sites of one group of the shopping list, the most urgent first. */
  'portfolio.orders': { input: ordersAsk, output: orders },
  /** A table of the sites that pass, for a spreadsheet. */
  'portfolio.table': { input: tableAsk, output: table },
  /** What is still to be worked out is left for another time. */
  'portfolio.stop': {
    input: none,
    output: z.strictObject({ stopped: z.literal(true) }).readonly(),
  },
  'site.open': {
    input: z.strictObject({ id }).readonly(),
    output: z.strictObject({ site, revision }).readonly(),
  },
  'site.create': {
    input: z.strictObject({ site }).readonly(),
    output: written,
  },
  'site.edit': {
    input: z.strictObject({ id, base: revision, changes }).readonly(),
    output: written,
  },
  /** The file is kept aside, so that `site.restore` can bring it back. */
  'site.remove': {
    input: z.strictObject({ id }).readonly(),
    output: z.strictObject({ removed: z.literal(true) }).readonly(),
  },
  'site.restore': {
    input: z.strictObject({ id }).readonly(),
    output: z.strictObject({ revision }).readonly(),
  },
  /** Puts the last good version back in place of a damaged document. */
  'site.recover': {
    input: z.strictObject({ id: z.string().max(100) }).readonly(),
    output: z.strictObject({ revision }).readonly(),
  },
  'site.export': {
    input: z.strictObject({ id }).readonly(),
    output: z.strictObject({ fileName: z.string(), text: z.string() }).readonly(),
  },
  /** The same for a site taken off the list: the version that `site.restore` would bring back. */
  'site.exportRemoved': {
    input: z.strictObject({ id }).readonly(),
    output: z.strictObject({ fileName: z.string(), text: z.string() }).readonly(),
  },
  /** What an import of this file would meet here. Nothing is changed. */
  'site.compare': {
    input: z.strictObject({ text: z.string() }).readonly(),
    output: comparison,
  },
  /** A site that is here already is refused (`already-there`) unless a choice says what to do. */
  'site.import': {
    input: z
      .strictObject({ text: z.string(), choice: choice.optional(), prefer: prefer.optional() })
      .readonly(),
    output: imported,
  },
  /** Files being read are given up, with nothing of them written: whoever asked is told `stopped`. */
  'site.stopReading': {
    input: none,
    output: z.strictObject({ stopped: z.literal(true) }).readonly(),
  },
  'library.open': {
    input: none,
    output: z
      .strictObject({
        products: z.array(product).readonly(),
        instruments: z.array(instrument).readonly(),
        settings,
        revisions: z
          .strictObject({ products: revision, instruments: revision, settings: revision })
          .readonly(),
      })
      .readonly(),
  },
  'library.edit': {
    input: z
      .strictObject({
        document: library,
        base: revision,
        changes,
      })
      .readonly(),
    output: written,
  },
  /** Puts the last good version of a damaged library document back, or starts it empty when there is none. */
  'library.recover': {
    input: z.strictObject({ document: library }).readonly(),
    output: z.strictObject({ revision }).readonly(),
  },
  /** The settings as a document of their own, to take along. */
  'settings.export': {
    input: none,
    output: z.strictObject({ text: z.string() }).readonly(),
  },
  /** The settings such a document holds, brought up to today's version. Nothing is changed. */
  'settings.read': {
    input: z.strictObject({ text: z.string() }).readonly(),
    output: z.strictObject({ settings }).readonly(),
  },
  /** The daily copies of one document, newest first. */
  'backups.list': {
    input: z.strictObject({ document: documentKey }).readonly(),
    output: z
      .strictObject({
        copies: z
          .array(z.strictObject({ copy: z.string(), takenAt: instant, kilobytes: z.int() }).readonly())
          .readonly(),
      })
      .readonly(),
  },
  /** What going back to a copy would change: `mine` is today, `theirs` the copy. */
  'backups.preview': {
    input: z.strictObject({ document: documentKey, copy: z.string().max(60) }).readonly(),
    output: z
      .strictObject({
        mine: siteSummary.nullable(),
        theirs: siteSummary.nullable(),
        differences: z.array(difference).readonly(),
      })
      .readonly(),
  },
  /** Puts a copy in place. Today's version is copied first, so that this can be taken back the same way. */
  'backups.restore': {
    input: z.strictObject({ document: documentKey, copy: z.string().max(60) }).readonly(),
    output: written,
  },
  /** The folder a team shares through a file-sync service, where one was chosen. */
  'shared.describe': {
    input: none,
    output: z.strictObject({ folder: z.string().nullable(), canChoose: z.boolean() }).readonly(),
  },
  'shared.choose': {
    input: none,
    output: z.strictObject({ folder: z.string().nullable() }).readonly(),
  },
  /** What came into the shared folder and is not yet here. */
  'shared.list': {
    input: none,
    output: z
      .strictObject({
        incoming: z
          .array(
            z
              .strictObject({
                file: z.string(),
                id: id.nullable(),
                name,
                /** `removed`: it was here and was taken off the list */
                state: z.enum(['new', 'removed', 'differs', 'unreadable']),
                changedAt: instant,
              })
              .readonly(),
          )
          .readonly(),
      })
      .readonly(),
  },
  'shared.compare': {
    input: z.strictObject({ file: z.string().max(200) }).readonly(),
    output: comparison,
  },
  'shared.take': {
    input: z
      .strictObject({ file: z.string().max(200), choice: choice.optional(), prefer: prefer.optional() })
      .readonly(),
    output: imported,
  },
  /** Writes this installation's own copy of a site into the shared folder; other copies are never touched. */
  'shared.publish': {
    input: z.strictObject({ id }).readonly(),
    output: z.strictObject({ file: z.string() }).readonly(),
  },
  'demo.add': {
    input: none,
    output: z.strictObject({ ids: z.array(id).readonly() }).readonly(),
  },
  /** Saves what the window shows in its print layout; a host without that (see `host.describe`) says unavailable. */
  'report.savePdf': {
    input: z.strictObject({ title: name, sheet: z.enum(['A4', 'Letter']) }).readonly(),
    output: z.strictObject({ saved: z.boolean() }).readonly(),
  },
} as const satisfies Record<Method, { readonly input: z.ZodType; readonly output: z.ZodType }>

export type Contract = typeof contract

export type Input<M extends Method> = z.output<Contract[M]['input']>
export type Output<M extends Method> = z.output<Contract[M]['output']>

/** What answers the calls. A missing method does not compile. */
export type Services = {
  readonly [M in Method]: (input: Input<M>) => Promise<Outcome<Output<M>>>
}

/** What a screen holds: one function for all methods, typed by the method's name. */
export type Call = <M extends Method>(method: M, input: Input<M>) => Promise<Outcome<Output<M>>>

export type SiteRow = z.output<typeof siteRow>
export type SiteSummary = z.output<typeof siteSummary>
export type SiteComparison = z.output<typeof comparison>
export type HostDescription = Output<'host.describe'>
