import { z } from 'zod'
import type { Outcome } from '../outcome'
import type { Change } from '../documents/changes'
import { instrument, product, settings } from '../documents/library-schema'
import { id, instant, name } from '../documents/parts'
import { site } from '../documents/site-schema'

const none = z.strictObject({}).readonly()

const change: z.ZodType<Change> = z.discriminatedUnion('op', [
  z
    .strictObject({
      op: z.literal('set'),
      path: z
        .array(z.union([z.string().max(100), z.int().min(0)]))
        .max(40)
        .readonly(),
      value: z.unknown(),
    })
    .readonly(),
  z
    .strictObject({
      op: z.literal('remove'),
      path: z
        .array(z.union([z.string().max(100), z.int().min(0)]))
        .max(40)
        .readonly(),
    })
    .readonly(),
])

const revision = z.int().min(0)

/** A site as the list shows it. A damaged one is listed with what happened to it and never stops the others. */
const siteRow = z.discriminatedUnion('state', [
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
      setAside: z.string().nullable(),
      lastGoodAt: instant.nullable(),
    })
    .readonly(),
  z.strictObject({ state: z.literal('newer'), id: z.string(), version: z.int() }).readonly(),
])

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
    output: z.strictObject({ sites: z.array(siteRow).readonly() }).readonly(),
  },
  'site.open': {
    input: z.strictObject({ id }).readonly(),
    output: z.strictObject({ site, revision }).readonly(),
  },
  'site.create': {
    input: z.strictObject({ site }).readonly(),
    output: z.strictObject({ revision, savedAt: instant }).readonly(),
  },
  'site.edit': {
    input: z.strictObject({ id, base: revision, changes: z.array(change).max(20_000).readonly() }).readonly(),
    output: z.strictObject({ revision, savedAt: instant }).readonly(),
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
  'site.import': {
    input: z.strictObject({ text: z.string() }).readonly(),
    output: z.strictObject({ id, name, products: z.int(), instruments: z.int() }).readonly(),
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
        document: z.enum(['products', 'instruments', 'settings']),
        base: revision,
        changes: z.array(change).max(20_000).readonly(),
      })
      .readonly(),
    output: z.strictObject({ revision, savedAt: instant }).readonly(),
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
} as const satisfies Record<string, { readonly input: z.ZodType; readonly output: z.ZodType }>

export type Contract = typeof contract
export type Method = keyof Contract
export const METHODS = Object.keys(contract) as readonly Method[]

export type Input<M extends Method> = z.output<Contract[M]['input']>
export type Output<M extends Method> = z.output<Contract[M]['output']>

/** What answers the calls. A missing method does not compile. */
export type Services = {
  readonly [M in Method]: (input: Input<M>) => Promise<Outcome<Output<M>>>
}

/** What a screen holds: one function for all methods, typed by the method's name. */
export type Call = <M extends Method>(method: M, input: Input<M>) => Promise<Outcome<Output<M>>>

export type SiteRow = z.output<typeof siteRow>
export type HostDescription = Output<'host.describe'>
