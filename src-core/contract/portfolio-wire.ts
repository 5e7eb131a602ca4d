import { z } from 'zod'
import { SORT_KEYS } from '../spend/portfolio-order'

/** The parts of the calls about all sites. Money travels as the decimal text it prints as. */
const day = z.iso.date()
const key = z.string().max(100)
const version = z.string().max(80)
const place = z.int().min(0)

const filter = z
  .strictObject({
    words: z.string().max(500),
    currency: key.nullable(),
    productId: key.nullable(),
    attentionOnly: z.boolean(),
  })
  .readonly()

/** Which sites, in which order; `locale` says how names are ordered. */
export const portfolioView = z
  .strictObject({
    filter,
    sorting: z.strictObject({ key: z.enum(SORT_KEYS), down: z.boolean() }).readonly(),
    locale: z.string().max(100),
  })
  .readonly()

/** Rows `from` to `from + count` of a view. `version`: the state of things asked about; empty for the newest. */
export const slice = z
  .strictObject({ version, view: portfolioView, from: place, count: z.int().min(1).max(1000) })
  .readonly()

export const progress = z
  .strictObject({
    /** another one when any row has changed */
    version,
    sites: z.int(),
    /** sites whose row is there */
    known: z.int(),
    /** sites still to be worked out */
    left: z.int(),
    running: z.boolean(),
    unread: z.int(),
    /** the first of the sites that cannot be read */
    unreadSites: z.array(z.strictObject({ id: z.string(), newer: z.boolean() }).readonly()).readonly(),
  })
  .readonly()

const sliced = {
  version,
  from: place,
  /** rows of the whole view */
  total: z.int(),
  /** made by `packShown` */
  rows: z.string(),
}
export const rowsSlice = z.strictObject(sliced).readonly()

export const viewOf = z
  .strictObject({
    ...sliced,
    /** of all sites, whatever the filter: */
    known: z.int(),
    wanting: z.int(),
    earlier: z.int(),
    currencies: z.array(key).readonly(),
    products: z.array(z.strictObject({ id: key, name: z.string() }).readonly()).readonly(),
    /** of the sites that pass: */
    totals: z
      .array(
        z
          .strictObject({
            currency: key,
            sites: z.int(),
            cost: z.string(),
            unknownLines: z.int(),
            racks: z.number(),
          })
          .readonly(),
      )
      .readonly(),
  })
  .readonly()

export const sumsAsk = z.strictObject({ version, view: portfolioView, until: day }).readonly()

const groupKey = { productId: key, containerLitres: z.number(), currency: key }

/** What the sites that pass come to, added up: months, products, orders. */
export const sums = z
  .strictObject({
    version,
    months: z
      .array(
        z
          .strictObject({
            currency: key,
            months: z
              .array(z.strictObject({ month: key, cost: z.string(), unknownLines: z.int() }).readonly())
              .readonly(),
          })
          .readonly(),
      )
      .readonly(),
    products: z
      .array(
        z
          .strictObject({
            productId: key,
            name: z.string(),
            currency: key,
            sites: z.int(),
            litres: z.number(),
            containers: z.number(),
            cost: z.string(),
            unknown: z.int(),
          })
          .readonly(),
      )
      .readonly(),
    orders: z
      .array(
        z
          .strictObject({
            ...groupKey,
            product: z.string(),
            containers: z.number(),
            cost: z.string(),
            withoutPrice: z.int(),
            sites: z.int(),
          })
          .readonly(),
      )
      .readonly(),
  })
  .readonly()

export const ordersAsk = z
  .strictObject({
    version,
    view: portfolioView,
    until: day,
    group: z.strictObject(groupKey).readonly(),
    most: z.int().min(1).max(1000),
  })
  .readonly()

export const orders = z
  .strictObject({
    lines: z
      .array(
        z
          .strictObject({
            siteId: key,
            siteName: z.string(),
            containers: z.number(),
            orderNow: z.boolean(),
            orderOn: day,
            daysOfCover: z.number(),
            runsOutOn: day,
          })
          .readonly(),
      )
      .readonly(),
  })
  .readonly()

export const tableAsk = z
  .strictObject({
    version,
    view: portfolioView,
    table: z.enum(['sites', 'products', 'months', 'orders']),
    decimalSign: z.enum(['point', 'comma']),
    until: day,
  })
  .readonly()

export const table = z.strictObject({ text: z.string() }).readonly()
