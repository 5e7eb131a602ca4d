import { describe, expect, it } from 'vitest'
import { LIMITS } from '#core/documents/parts'
import { MOST_MOVEMENTS } from '#core/spend/delivery-types'
import { DeliveryImport } from '#renderer/screens/spend/deliveries/delivery-import.svelte.ts'
import { decodeBytes, MOST_BYTES, textOf } from '#renderer/screens/spend/deliveries/file-text.ts'
import { readRows } from '#renderer/screens/spend/deliveries/read-rows.ts'
import { aProduct, aSite } from '#tests/core/spend/build'

const settings = {
  repName: '',
  firmName: '',
  decimalSign: 'point' as const,
  theme: 'system' as const,
  sheet: 'A4' as const,
  currency: 'EUR',
  units: 'metric' as const,
  protocol: { runs: '3', seconds: '60' },
  cautionTexts: [],
  codeLimits: [],
  glassWeights: [],
  deliveryColumns: [],
  serviceLevel: '95',
}
const product = aProduct({ name: 'Rinse aid', containerSize: { value: '10', unit: 'L' } })
const imported = async (source: string | Uint8Array) => {
  const site = aSite()
  const job = new DeliveryImport(() => ({ site, products: [product], settings, today: '2026-03-31' }))
  const bytes = typeof source === 'string' ? new TextEncoder().encode(source) : source
  await job.file(new Blob([bytes as Uint8Array<ArrayBuffer>]))
  return job
}
const HEAD = 'Date,Product,Containers,Delivery note\r\n'
const ROW = '2026-03-09,Rinse aid,3,DN-1\r\n'

describe('a delivery list', () => {
  it.each([
    ['commas', `${HEAD}${ROW}`],
    ['semicolons', `${HEAD}${ROW}`.replaceAll(',', ';')],
    ['tabs, as a spreadsheet copies them', `${HEAD}${ROW}`.replaceAll(',', '\t')],
    ['a byte order mark', `\ufeff${HEAD}${ROW}`],
    ['line feeds only', `${HEAD}${ROW}`.replaceAll('\r', '')],
    ['no line break at the end', `${HEAD}${ROW}`.trimEnd()],
    ['quotes around everything', '"Date","Product","Containers"\r\n"2026-03-09","Rinse aid","3"\r\n'],
  ])('parted by %s is read', async (_, source) => {
    const job = await imported(source)
    expect(job.stage).toBe('preview')
    expect(job.reading?.problems).toEqual([])
    expect(job.reading?.deliveries.map((one) => [one.line, one.delivery.fullContainers])).toEqual([[2, '3']])
    expect(job.ready).toBe(true)
  })

  it('without headings asks which column holds what', async () => {
    const job = await imported(ROW)
    expect(job.hasHeadings).toBe(false)
    expect(job.missing).toEqual(['date', 'product', 'containers'])
    expect(job.ready).toBe(false)
    await job.setColumn('date', 0)
    await job.setColumn('product', 1)
    await job.setColumn('containers', 2)
    expect(job.reading?.deliveries[0]?.line).toBe(1)
  })

  it('with one bad row books nothing until that row is left out on purpose', async () => {
    const job = await imported(`${HEAD}${ROW}2026-03-10,Nobody’s,1,DN-2\r\n`)
    expect(job.reading?.problems).toMatchObject([{ line: 3, fault: { code: 'product-unknown' } }])
    expect(job.ready).toBe(false)
    job.leaveOut = true
    expect(job.ready).toBe(true)
  })

  it('whose separators are mixed tells the rows that do not fit', async () => {
    const job = await imported(`${HEAD}${ROW}2026-03-10;Rinse aid;1;DN-2\r\n${ROW.replace('DN-1', 'DN-3')}`)
    expect(job.reading?.deliveries.map((one) => one.line)).toEqual([2, 4])
    expect(new Set(job.reading?.problems.map((one) => one.line))).toEqual(new Set([3]))
  })

  it('with a quotation mark that never closes tells the row, and takes nothing after it for a delivery', async () => {
    const job = await imported(`${HEAD}${ROW}2026-03-10,"Rinse aid,1,DN-2\r\n${ROW}${ROW}`)
    expect(job.reading?.problems.some((one) => one.line === 3 && one.fault.code === 'broken-quotes')).toBe(
      true,
    )
    expect(job.reading?.deliveries.map((one) => one.line)).toEqual([2])
    expect(job.ready).toBe(false)
  })

  it('with formulas in its cells has them as words, never run', async () => {
    const job = await imported(`${HEAD}2026-03-10,=cmd|' /C calc'!A0,1,DN-2\r\n`)
    expect(job.reading?.problems).toMatchObject([
      { line: 2, fault: { code: 'product-unknown', text: "=cmd|' /C calc'!A0" } },
    ])
  })

  it('with a line of many millions of characters tells that row and is not stuck', async () => {
    const job = await imported(`${HEAD}${ROW}2026-03-10,Rinse aid,1,${'x'.repeat(15_000_000)}\r\n`)
    expect(job.reading?.problems).toMatchObject([
      { line: 3, fault: { code: 'cell-too-long', length: 15_000_000 } },
    ])
    expect(job.reading?.deliveries.map((one) => one.line)).toEqual([2])
  })

  it('of more bytes than any list has is refused before it is read', async () => {
    let read = false
    const outcome = await textOf({
      size: MOST_BYTES + 1,
      arrayBuffer: () => {
        read = true
        return Promise.resolve(new ArrayBuffer(0))
      },
      slice: () => new Blob([ROW]),
    })
    expect(outcome).toEqual({ kind: 'too-large', megabytes: 21 })
    expect(read).toBe(false)
  })

  it('with a line of 100 MB is refused with the number of that row, chosen or pasted, and nothing is booked', async () => {
    const source = `${HEAD}${ROW}2026-03-10,Rinse aid,1,${'x'.repeat(100_000_000)}\r\n${ROW}`
    const file = await imported('')
    await file.file(new Blob([source]))
    const paste = await imported(source)
    for (const job of [file, paste]) {
      expect(job.refused).toEqual({ kind: 'line-too-long', line: 3 })
      expect(job.stage).toBe('choose')
      expect(job.reading).toBeNull()
      expect(job.ready).toBe(false)
    }
  })

  it('that is large without a long line is refused by its size', async () => {
    const job = await imported(HEAD + ROW.repeat(700_000))
    expect(job.refused).toMatchObject({ kind: 'too-large' })
  })

  it('stopped while its file is still being read stays stopped', async () => {
    const job = await imported('')
    const slow = {
      size: 100,
      arrayBuffer: async () => {
        await new Promise((go) => setTimeout(go, 20))
        return new Blob([HEAD + ROW]).arrayBuffer()
      },
      slice: () => new Blob([]),
    }
    const reading = job.file(slow)
    expect(job.stage).toBe('reading')
    job.stop()
    await reading
    expect(job.stage).toBe('choose')
    expect(job.reading).toBeNull()
  })

  it('that is empty says so', async () => {
    for (const source of ['', '\ufeff', ' \r\n \r\n']) {
      const job = await imported(source)
      expect(job.refused).toEqual({ kind: 'empty' })
      expect(job.stage).toBe('choose')
    }
  })

  it('of 50 000 rows shows how far it is and can be stopped', async () => {
    const rows = Array.from({ length: 50_000 }, (_, n) => `2026-03-09,Rinse aid,1,DN-${n}\r\n`).join('')
    const told: number[] = []
    const read = await readRows(
      HEAD + rows,
      (part) => told.push(part),
      () => false,
    )
    expect(read?.rows).toHaveLength(50_001)
    expect(told.length).toBeGreaterThan(5)
    expect(told).toEqual(told.toSorted((a, b) => a - b))
    const stoppedAfter: number[] = []
    const stopped = await readRows(
      HEAD + rows,
      (part) => stoppedAfter.push(part),
      () => stoppedAfter.length >= 2,
    )
    expect(stopped).toBeNull()
    expect(stoppedAfter).toHaveLength(2)
  })

  it('larger than a site file can hold is not booked', async () => {
    const rows = Array.from({ length: MOST_MOVEMENTS + 1 }, (_, n) => `2026-03-09,Rinse aid,1,DN-${n}\r\n`)
    const job = await imported(HEAD + rows.join(''))
    expect(job.reading?.deliveries).toHaveLength(MOST_MOVEMENTS + 1)
    expect(job.tooMany).toBe(true)
    expect(job.ready).toBe(false)
    expect(MOST_MOVEMENTS).toBe(LIMITS.list)
  })
})

describe('the letters of a file', () => {
  const words = 'Äther, Œuvre'

  it('are UTF-8 when they can be', () => {
    expect(decodeBytes(new TextEncoder().encode(words))).toEqual({
      kind: 'text',
      text: words,
      guessed: false,
    })
  })

  it('are UTF-16 where a byte order mark says so', () => {
    const little = new Uint8Array(2 + words.length * 2)
    const view = new DataView(little.buffer)
    view.setUint16(0, 0xfeff, true)
    for (let at = 0; at < words.length; at += 1) view.setUint16(2 + 2 * at, words.charCodeAt(at), true)
    expect(decodeBytes(little)).toEqual({ kind: 'text', text: words, guessed: false })
  })

  /** Source: Windows code page 1252, the same as ISO 8859-1 here: 0xC4 is Ä, 0xE9 is é. */
  it('are taken for Western European otherwise, and the guess is told', () => {
    expect(decodeBytes(new Uint8Array([0xc4, 0x74, 0xe9]))).toEqual({
      kind: 'text',
      text: 'Äté',
      guessed: true,
    })
  })

  it('of a workbook, or of no text at all, are not read', () => {
    expect(decodeBytes(new Uint8Array([0x50, 0x4b, 3, 4, 0, 0]))).toEqual({ kind: 'workbook' })
    expect(decodeBytes(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0]))).toEqual({ kind: 'not-text' })
  })
})
