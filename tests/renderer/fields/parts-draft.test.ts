import { describe, expect, it } from 'vitest'
import { PartsDraft } from '#renderer/fields/parts-draft.svelte.ts'

interface Parts {
  readonly low: string | null
  readonly high: string | null
}
type Whole = { readonly low: string; readonly high: string } | null

function draftOver(start: Whole) {
  const record = { value: start }
  const draft = new PartsDraft<Parts, Whole>({
    whole: () => record.value,
    split: (whole) => whole ?? { low: null, high: null },
    join: ({ low, high }) => (low === null || high === null ? null : { low, high }),
    commit: (whole) => {
      record.value = whole
    },
  })
  return { draft, record }
}

describe('boxes that make one value together', () => {
  it('put it into the record only once all are filled, and keep the rest meanwhile', () => {
    const { draft, record } = draftOver(null)
    draft.put({ low: '1' }, 'low')
    expect(record.value).toBeNull()
    draft.follow(record.value)
    expect(draft.parts).toEqual({ low: '1', high: null })
    draft.put({ high: '2' }, 'high')
    expect(record.value).toEqual({ low: '1', high: '2' })
  })

  it('take it out again when one is emptied, without forgetting the other', () => {
    const { draft, record } = draftOver({ low: '1', high: '2' })
    draft.put({ low: null }, 'low')
    draft.follow(record.value)
    expect(record.value).toBeNull()
    expect(draft.parts).toEqual({ low: null, high: '2' })
  })

  it('follow an undo, also back to nothing', () => {
    const { draft } = draftOver(null)
    draft.put({ low: '1', high: '2' }, 'both')
    draft.follow(null)
    expect(draft.parts).toEqual({ low: null, high: null })
    draft.follow({ low: '3', high: '4' })
    expect(draft.parts).toEqual({ low: '3', high: '4' })
  })
})
