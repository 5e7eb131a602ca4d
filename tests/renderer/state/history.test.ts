import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { editOf, History, type Undoable } from '#renderer/state/history.svelte.ts'

class Sheet implements Undoable {
  content: Readonly<Record<string, number>> = {}
  constructor(readonly name: string) {}
  set(content: Readonly<Record<string, number>>): void {
    this.content = content
  }
}

const edit = (
  history: History,
  sheet: Sheet,
  key: string,
  value: number,
  join: string | null = null,
): void => {
  const part = editOf(sheet, (content) => ({ ...content, [key]: value }))
  sheet.set(part.after as Sheet['content'])
  history.record({ label: `set ${key}`, parts: [part], join })
}

const scope = (...sheets: readonly Sheet[]): ReadonlySet<string> => new Set(sheets.map((sheet) => sheet.name))

describe('undo and redo', () => {
  it('take back any number of edits up to several hundred, and do them all again', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ sheet: fc.nat(1), key: fc.constantFrom('a', 'b', 'c'), value: fc.integer() }), {
          maxLength: 300,
        }),
        (edits) => {
          const sheets = [new Sheet('site'), new Sheet('products')] as const
          const history = new History()
          for (const { sheet, key, value } of edits) edit(history, sheets[sheet === 0 ? 0 : 1], key, value)
          const end = sheets.map((sheet) => sheet.content)
          const all = scope(...sheets)
          while (history.undo(all) !== null);
          expect(sheets.map((sheet) => sheet.content)).toEqual([{}, {}])
          while (history.redo(all) !== null);
          expect(sheets.map((sheet) => sheet.content)).toEqual(end)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('leave at least 100 steps to go back', () => {
    const history = new History()
    const sheet = new Sheet('site')
    for (let step = 1; step <= 150; step += 1) edit(history, sheet, 'a', step)
    for (let step = 0; step < 100; step += 1) history.undo(scope(sheet))
    expect(sheet.content).toEqual({ a: 50 })
  })

  it('join the typing of one visit to a field into one step, and start anew at the next visit', () => {
    const history = new History()
    const sheet = new Sheet('site')
    for (const value of [2, 29, 295]) edit(history, sheet, 'end', value, 'run-1-end')
    history.seal()
    for (const value of [3, 31] as const) edit(history, sheet, 'end', value, 'run-1-end')
    history.undo(scope(sheet))
    expect(sheet.content).toEqual({ end: 295 })
    history.undo(scope(sheet))
    expect(sheet.content).toEqual({})
  })

  it('keep no step for typing that ended where it began', () => {
    const history = new History()
    const sheet = new Sheet('site')
    edit(history, sheet, 'a', 1)
    edit(history, sheet, 'b', 5, 'b')
    edit(history, sheet, 'b', 6, 'b')
    const back = editOf(sheet, () => ({ a: 1 }))
    sheet.set({ a: 1 })
    history.record({ label: 'cleared', parts: [back], join: 'b' })
    history.undo(scope(sheet))
    expect(sheet.content).toEqual({})
  })

  it('do not reach into a document that is out of sight', () => {
    const history = new History()
    const [site, products] = [new Sheet('site'), new Sheet('products')]
    edit(history, products, 'price', 1)
    edit(history, site, 'name', 1)
    expect(history.undo(scope(products))?.label).toBe('set price')
    expect(site.content).toEqual({ name: 1 })
  })

  it('stop before an edit that also touched something out of sight', () => {
    const history = new History()
    const [site, products] = [new Sheet('site'), new Sheet('products')]
    const parts = [editOf(site, () => ({ pump: 1 })), editOf(products, () => ({ product: 1 }))]
    for (const part of parts) part.document.set(part.after as never)
    history.record({ label: 'both', parts, join: null })
    expect(history.undo(scope(products))).toBeNull()
    expect(history.undo(scope(site, products))?.label).toBe('both')
    expect([site.content, products.content]).toEqual([{}, {}])
  })

  it('drop what could be done again once something new was done to the same document', () => {
    const history = new History()
    const sheet = new Sheet('site')
    edit(history, sheet, 'a', 1)
    history.undo(scope(sheet))
    edit(history, sheet, 'b', 1)
    expect(history.redo(scope(sheet))).toBeNull()
  })
})
