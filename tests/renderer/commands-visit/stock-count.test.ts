import { describe, expect, it } from 'vitest'
import { countOf, countStock, startVisit } from '#renderer/commands/visit.ts'
import { AT, emptySite, freeze, nextId, product, PRODUCT } from './site.ts'

const begin = () => {
  const visitId = nextId()
  return { visitId, site: freeze(startVisit(emptySite(), { id: visitId, at: AT, by: '' })) }
}
const count = { id: nextId(), on: '2026-03-09', product, fullContainers: '3', part: null } as const

describe('counting stock at a visit', () => {
  it('keeps one count per product and visit, the last one entered', () => {
    const { site, visitId } = begin()
    const once = freeze(countStock(site, { ...count, visitId }))
    const twice = countStock(once, {
      ...count,
      visitId,
      fullContainers: '4',
      part: { value: '2.5', unit: 'L' },
    })
    expect(twice.stock).toHaveLength(1)
    expect(countOf(twice, visitId, PRODUCT)).toMatchObject({
      fullContainers: '4',
      part: { value: '2.5', unit: 'L' },
    })
  })

  it('takes the count out again when nothing is entered, and leaves other visits alone', () => {
    const { site, visitId } = begin()
    const once = countStock(site, { ...count, visitId })
    expect(countStock(once, { ...count, visitId, fullContainers: null }).stock).toEqual([])
    expect(countStock(once, { ...count, visitId: nextId() })).toBe(once)
  })

  it('does not write a count of containers whose size nobody knows', () => {
    const { site, visitId } = begin()
    expect(countStock(site, { ...count, visitId, product: { ...product, containerSize: null } })).toBe(site)
  })
})
