import type { Parser, ParseLocalConfig, ParseResult } from 'papaparse'
import type { SourceRow } from '#core/spend/delivery-types'

export interface RowsRead {
  readonly rows: readonly SourceRow[]
  /** lines whose quotes do not close */
  readonly broken: readonly number[]
}

const SLICE = 200_000
const SEPARATORS = [',', ';', '\t', '|']

/** A text is parted in slices as a file is; the library's types grant that to files only. */
type ParseText = (text: string, config: ParseLocalConfig<string[], never>) => void

/** Lets the window breathe: a click on "Stop" is seen between two slices. */
export const breathe = (): Promise<void> => new Promise((go) => setTimeout(go, 0))

/**
 * Parts a text into rows, slice by slice, and tells how far it is (0 to 1). The separator is found by the text itself.
 * Null when it was stopped. Rows are numbered as a spreadsheet numbers them, from 1.
 */
export async function readRows(
  text: string,
  progress: (part: number) => void,
  stopped: () => boolean,
): Promise<RowsRead | null> {
  const { default: Papa } = await import('papaparse')
  const parse = Papa.parse as unknown as ParseText
  const rows: SourceRow[] = []
  const broken = new Set<number>()
  const plain = text.replace(/^\ufeff/u, '')
  return new Promise((done) => {
    parse(plain, {
      delimitersToGuess: SEPARATORS,
      skipEmptyLines: false,
      chunkSize: SLICE,
      chunk: (result, parser) => {
        take(result, rows, broken)
        parser.pause()
        progress(Math.min(1, result.meta.cursor / Math.max(1, plain.length)))
        void goOn(parser, stopped)
      },
      complete: () => done(stopped() ? null : { rows: withoutTail(rows), broken: [...broken] }),
    })
  })
}

function take(result: ParseResult<string[]>, rows: SourceRow[], broken: Set<number>): void {
  const before = rows.length
  for (const cells of result.data) rows.push({ line: rows.length + 1, cells })
  for (const error of result.errors) if (error.type === 'Quotes') broken.add(before + (error.row ?? 0) + 1)
}

async function goOn(parser: Parser, stopped: () => boolean): Promise<void> {
  await breathe()
  if (stopped()) parser.abort()
  else parser.resume()
}

/** The last line break of a file leaves an empty row behind. */
const withoutTail = (rows: readonly SourceRow[]): readonly SourceRow[] =>
  rows.at(-1)?.cells.every((cell) => cell === '') === true ? rows.slice(0, -1) : rows
