import type { Hazard, Id, PriceRow, Product, ProductRole } from '#core/records/index'
import { changeById, removeById } from '../lists'

export interface NewProduct {
  readonly id: Id
  readonly name: string
  readonly role: ProductRole
}

/** Hazards a role makes likely, ticked to begin with: too many cautions are the smaller mistake. */
const LIKELY: Readonly<Record<ProductRole, readonly Hazard[]>> = {
  'rinse-aid': ['irritant'],
  detergent: ['corrosive', 'alkaline'],
  sanitizer: ['irritant'],
  delimer: ['corrosive', 'acid'],
  other: [],
}

/** A product of which only the name and the role are known. */
export const newProduct = (input: NewProduct): Product => ({
  ...input,
  density: null,
  strength: { kind: 'none' },
  hazards: LIKELY[input.role],
  containerSize: null,
  prices: [],
  labelLimits: null,
  safetySheet: '',
  deliveredOn: null,
  shelfLifeDays: null,
  leadTimeDays: null,
})

type Products = readonly Product[]

export const addProduct = (products: Products, input: NewProduct): Products => [
  ...products,
  newProduct(input),
]

export const changeProduct = (products: Products, id: Id, facts: Partial<Omit<Product, 'id'>>): Products =>
  changeById(products, id, (product) => ({ ...product, ...facts }))

export const toggleHazard = (products: Products, id: Id, hazard: Hazard, has: boolean): Products =>
  changeById(products, id, (product) => {
    const others = product.hazards.filter((other) => other !== hazard)
    return { ...product, hazards: has ? [...others, hazard] : others }
  })

export const removeProduct = (products: Products, id: Id): Products => removeById(products, id)

/** Prices stand in order of their day, oldest first. */
const inOrder = (prices: readonly PriceRow[]): readonly PriceRow[] =>
  prices.toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0))

export const addPrice = (products: Products, id: Id, row: PriceRow): Products =>
  changeById(products, id, (product) => ({ ...product, prices: inOrder([...product.prices, row]) }))

export const changePrice = (products: Products, id: Id, index: number, facts: Partial<PriceRow>): Products =>
  changeById(products, id, (product) => ({
    ...product,
    prices: inOrder(product.prices.map((row, at) => (at === index ? { ...row, ...facts } : row))),
  }))

export const removePrice = (products: Products, id: Id, index: number): Products =>
  changeById(products, id, (product) => ({
    ...product,
    prices: product.prices.filter((_row, at) => at !== index),
  }))
