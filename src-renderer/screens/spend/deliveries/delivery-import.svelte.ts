import type { Day, Product, Settings, Site } from '#core/records/index'
import { guessColumns, rememberColumns, withColumn } from '#core/spend/delivery-columns'
import { dateOrderOf, readDay } from '#core/spend/delivery-day'
import { DeliveryReader } from '#core/spend/delivery-rows'
import {
  MOST_MOVEMENTS,
  NEEDED_FIELDS,
  type DateOrder,
  type DeliveryColumns,
  type DeliveryField,
  type DeliveryReading,
} from '#core/spend/delivery-types'
import { refusedText, textOf, type FileText } from './file-text'
import { breathe, readRows, type RowsRead } from './read-rows'

/** What an import needs to know of the site and the library. */
export interface ImportSurroundings {
  readonly site: Site
  readonly products: readonly Product[]
  readonly settings: Settings
  readonly today: Day
}

export type Stage = 'choose' | 'reading' | 'preview'
/** ms of reading before the window gets its turn */
const AT_ONCE = 10

/** A list of deliveries on its way in: read, parted, looked at. Nothing is booked here. */
export class DeliveryImport {
  stage: Stage = $state('choose')
  /** 0 to 1, and what is being done */
  progress = $state(0)
  refused: Exclude<FileText, { kind: 'text' }> | { readonly kind: 'empty' } | null = $state.raw(null)
  /** the bytes did not say how letters are written */
  guessed = $state(false)
  hasHeadings = $state(true)
  columns: DeliveryColumns = $state.raw({
    date: null,
    product: null,
    containers: null,
    size: null,
    reference: null,
  })
  order: DateOrder | null = $state(null)
  /** the list itself does not tell the order of its days */
  orderAsked = $state(false)
  reading: DeliveryReading | null = $state.raw(null)
  leaveOut = $state(false)
  #read: RowsRead | null = $state.raw(null)
  #run = 0

  constructor(readonly around: () => ImportSurroundings) {}

  get headings(): readonly string[] {
    const first = this.#read?.rows[0]?.cells ?? []
    return this.hasHeadings ? first : first.map((_, index) => `Column ${index + 1}`)
  }

  /** A few rows as they stand in the list, to choose the columns by. */
  get sample(): readonly (readonly string[])[] {
    return this.#body.slice(0, 3).map((row) => row.cells)
  }

  get #body(): RowsRead['rows'] {
    return (this.#read?.rows ?? []).slice(this.hasHeadings ? 1 : 0)
  }

  get rowCount(): number {
    return this.#body.length
  }

  get missing(): readonly DeliveryField[] {
    return NEEDED_FIELDS.filter((field) => this.columns[field] === null)
  }

  get problemLines(): number {
    return new Set(this.reading?.problems.map((problem) => problem.line)).size
  }

  get tooMany(): boolean {
    return (this.reading?.deliveries.length ?? 0) + this.around().site.stock.length > MOST_MOVEMENTS
  }

  /** All of it can be booked, or what cannot was left out on purpose. */
  get ready(): boolean {
    const reading = this.reading
    if (reading === null || this.missing.length > 0 || this.tooMany) return false
    return reading.deliveries.length > 0 && (reading.problems.length === 0 || this.leaveOut)
  }

  async file(file: Pick<Blob, 'size' | 'arrayBuffer' | 'slice'>): Promise<void> {
    const run = this.#begin()
    const result = await textOf(file)
    if (run !== this.#run) return
    if (result.kind === 'text') await this.text(result.text, result.guessed)
    else this.#refuse(result)
  }

  #refuse(why: NonNullable<DeliveryImport['refused']>): void {
    this.refused = why
    this.stage = 'choose'
  }

  async text(text: string, guessed = false): Promise<void> {
    const run = this.#begin()
    const refused = refusedText(text)
    if (refused !== null) return this.#refuse(refused)
    this.guessed = guessed
    const read = await readRows(
      text,
      (part) => (this.progress = part / 2),
      () => run !== this.#run,
    )
    if (read === null || run !== this.#run) return
    if (read.rows.every((row) => row.cells.every((cell) => cell.trim() === ''))) {
      this.#refuse({ kind: 'empty' })
      return
    }
    this.#read = read
    const first = read.rows[0]?.cells ?? []
    this.hasHeadings = !first.some((cell) => readDay(cell, 'day-first') !== 'unreadable')
    this.columns = guessColumns(this.headings, this.around().settings.deliveryColumns)
    await this.#look(run)
  }

  stop(): void {
    this.#run += 1
    this.stage = 'choose'
  }

  async setColumn(field: DeliveryField, index: number | null): Promise<void> {
    this.columns = withColumn(this.columns, field, index)
    await this.#look(this.#begin())
  }

  async setHeadings(hasHeadings: boolean): Promise<void> {
    this.hasHeadings = hasHeadings
    this.columns = guessColumns(this.headings, this.around().settings.deliveryColumns)
    await this.#look(this.#begin())
  }

  async setOrder(order: DateOrder): Promise<void> {
    this.order = order
    await this.#look(this.#begin(), false)
  }

  /** The headings chosen, for the next list; none when the list had none. */
  get remembered(): Settings['deliveryColumns'] {
    return this.hasHeadings
      ? rememberColumns(this.columns, this.headings)
      : this.around().settings.deliveryColumns
  }

  #begin(): number {
    this.#run += 1
    this.refused = null
    this.reading = null
    this.leaveOut = false
    this.progress = 0
    this.stage = 'reading'
    return this.#run
  }

  /** Reads every row with the columns as chosen. */
  async #look(run: number, ownOrder = true): Promise<void> {
    if (this.missing.length > 0) {
      this.stage = 'preview'
      return
    }
    const body = this.#body
    const at = this.columns.date
    if (ownOrder) {
      const days = at === null ? [] : body.map((row) => row.cells[at] ?? '')
      this.order = dateOrderOf(days)
      this.orderAsked = this.order === null && days.some((day) => readDay(day, null) === 'order-unknown')
    }
    const { site, products, settings, today } = this.around()
    const reader = new DeliveryReader({
      columns: this.columns,
      order: this.order,
      decimalSign: settings.decimalSign,
      products,
      currency: site.currency,
      today,
      booked: site.stock,
    })
    for (const line of this.#read?.broken ?? []) reader.broken(line)
    let since = performance.now()
    for (const [index, row] of body.entries()) {
      reader.add(row)
      // by the clock and not by the row: how long one takes depends on the list and on the computer
      if (performance.now() - since < AT_ONCE) continue
      this.progress = 0.5 + (0.5 * index) / body.length
      await breathe()
      if (run !== this.#run) return
      since = performance.now()
    }
    this.reading = reader.reading
    this.stage = 'preview'
  }
}
