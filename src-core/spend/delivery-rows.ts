import type { CurrencyCode, Day, Entry, Product, StockMovement } from '../records'
import type { DecimalSign } from '../units/parse'
import { withoutTextMark } from './csv'
import { readContainersCell, readDayCell, readSizeCell } from './delivery-cells'
import type {
  DateOrder,
  DeliveryColumns,
  DeliveryFault,
  DeliveryField,
  DeliveryProblem,
  DeliveryReading,
  NewDelivery,
  SourceRow,
} from './delivery-types'

export interface DeliveryContext {
  readonly columns: DeliveryColumns
  readonly order: DateOrder | null
  readonly decimalSign: DecimalSign
  readonly products: readonly Product[]
  readonly currency: CurrencyCode
  readonly today: Day
  /** movements already booked */
  readonly booked: readonly StockMovement[]
}

/** No cell of a delivery list needs more. */
const LONGEST = 1000

/** Reads rows of a list of deliveries one after another; remembers what it has seen, so that rows can come in parts. */
export class DeliveryReader {
  readonly #deliveries: { readonly line: number; readonly delivery: NewDelivery }[] = []
  readonly #problems: DeliveryProblem[] = []
  readonly #booked: number[] = []
  readonly #alike: number[] = []
  readonly #before: ReadonlySet<string>
  readonly #seen = new Set<string>()
  readonly #products = new Map<string, readonly Product[]>()

  constructor(readonly context: DeliveryContext) {
    this.#before = new Set(context.booked.filter((one) => one.kind === 'delivery').map(likeness))
    for (const product of context.products) {
      const key = plain(product.name)
      this.#products.set(key, [...(this.#products.get(key) ?? []), product])
    }
  }

  /** Reads a row. A row of empty cells counts as nothing; a row with any fault yields no delivery. */
  add(row: SourceRow): void {
    if (row.cells.every((cell) => cell.trim() === '')) return
    const faults: DeliveryFault[] = []
    const delivery = this.#read(row, faults)
    for (const fault of faults) this.#problems.push({ line: row.line, fault })
    if (delivery === null || faults.length > 0) return
    const key = likeness(delivery)
    // alike in everything, reference too, is one delivery written twice; without a reference it may be two
    const twice = this.#before.has(key) || (delivery.reference !== '' && this.#seen.has(key))
    if (twice) this.#booked.push(row.line)
    else {
      if (this.#seen.has(key)) this.#alike.push(row.line)
      this.#deliveries.push({ line: row.line, delivery })
    }
    this.#seen.add(key)
  }

  /** A line that could not be parted into cells. */
  broken(line: number): void {
    this.#problems.push({ line, fault: { code: 'broken-quotes' } })
  }

  get reading(): DeliveryReading {
    return {
      deliveries: this.#deliveries,
      problems: this.#problems,
      booked: this.#booked,
      alike: this.#alike,
    }
  }

  #read(row: SourceRow, faults: DeliveryFault[]): NewDelivery | null {
    const cell = (field: DeliveryField): string => {
      const at = this.context.columns[field]
      const text = at === null ? '' : (row.cells[at] ?? '')
      if (text.length > LONGEST) faults.push({ code: 'cell-too-long', field, length: text.length })
      return text.length > LONGEST ? '' : withoutTextMark(text.trim())
    }
    const texts = {
      date: cell('date'),
      product: cell('product'),
      containers: cell('containers'),
      size: cell('size'),
      reference: cell('reference'),
    }
    if (faults.length > 0) return null
    const { order, today, decimalSign, currency } = this.context
    const day = readDayCell(texts.date, order, today)
    const product = this.#product(texts.product)
    const containers = readContainersCell(texts.containers, decimalSign)
    const size =
      'fault' in product
        ? product
        : readSizeCell(texts.size, decimalSign, product.value, 'fault' in day ? today : day.value, currency)
    for (const cell of new Set([day, product, containers, size])) if ('fault' in cell) faults.push(cell.fault)
    if ('fault' in day || 'fault' in product || 'fault' in containers || 'fault' in size) return null
    return {
      on: day.value,
      productId: product.value.id,
      kind: 'delivery',
      fullContainers: containers.value,
      containerSize: size.value,
      part: null,
      tare: null,
      reference: texts.reference,
      visitId: null,
    }
  }

  #product(text: string): { readonly value: Product } | { readonly fault: DeliveryFault } {
    if (text === '') return { fault: { code: 'empty', field: 'product' } }
    const [found, other] = this.#products.get(plain(text)) ?? []
    if (found === undefined) return { fault: { code: 'product-unknown', text } }
    return other === undefined ? { value: found } : { fault: { code: 'product-ambiguous', text } }
  }
}

const plain = (name: string): string => name.trim().toLowerCase().replaceAll(/\s+/gu, ' ')

const likeness = (
  one: Pick<NewDelivery, 'on' | 'productId' | 'fullContainers' | 'containerSize' | 'reference'>,
): string =>
  [one.on, one.productId, one.fullContainers, sizeText(one.containerSize), plain(one.reference)].join('|')

const sizeText = (size: Entry): string => `${Number(size.value)} ${size.unit}`
