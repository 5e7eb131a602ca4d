import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mergeThreeWay } from '#renderer/state/merge.ts'

const base = { name: 'Old Mill Brewpub', runs: [{ end: '29' }], water: { pH: null } }

describe('mergeThreeWay(base, mine, theirs)', () => {
  it('keeps both edits when they are in different places', () => {
    const merged = mergeThreeWay(base, { ...base, name: 'Old Mill' }, {
      ...base,
      water: { pH: '7.2' as string | null },
    } as typeof base)
    expect(merged?.document).toEqual({ ...base, name: 'Old Mill', water: { pH: '7.2' } })
  })

  it('does not put one added run over another added at the same end', () => {
    const mine = { ...base, runs: [...base.runs, { end: '30' }] }
    const theirs = { ...base, runs: [...base.runs, { end: '31' }] }
    expect(mergeThreeWay(base, mine, theirs)).toBeNull()
  })

  it('sees a change inside something the other side replaced', () => {
    const mine = { ...base, runs: [{ end: '28' }] }
    const theirs = { ...base, runs: [] as { end: string }[] }
    expect(mergeThreeWay(base, mine, theirs)).toBeNull()
  })

  it('takes the same edit on both sides for one', () => {
    const both = { ...base, name: 'Brewpub' }
    expect(mergeThreeWay(base, both, { ...both })?.document).toEqual(both)
  })

  it('gives my version when the other side did nothing, and theirs when I did nothing', () => {
    const record = fc.dictionary(fc.constantFrom('a', 'b', 'c'), fc.jsonValue())
    fc.assert(
      fc.property(record, record, (before, after) => {
        const plain = JSON.parse(JSON.stringify([before, after]))
        expect(mergeThreeWay(plain[0], plain[1], plain[0])?.document).toEqual(plain[1])
        expect(mergeThreeWay(plain[0], plain[0], plain[1])?.document).toEqual(plain[1])
      }),
    )
  })
})
