import { describe, expect, it } from 'vitest'
import { once, oncePer, oncePerCompany } from '#core/once'

function counted<A extends readonly unknown[], T>(work: (...given: A) => T) {
  const counter = { times: 0 }
  const counting = (...given: A): T => {
    counter.times += 1
    return work(...given)
  }
  return { counter, counting }
}

describe('work that is done once', () => {
  it('waits until somebody asks, and is not repeated, even when it gives nothing', () => {
    const { counter, counting } = counted(() => null)
    const ask = once(counting)
    expect(counter.times).toBe(0)
    expect([ask(), ask()]).toEqual([null, null])
    expect(counter.times).toBe(1)
  })

  it('is done for each record, and again for an edited copy of it', () => {
    const { counter, counting } = counted((record: { readonly size: number }) => ({ twice: 2 * record.size }))
    const twice = oncePer(counting)
    const record = { size: 4 }
    expect([twice(record), twice(record), twice({ ...record, size: 5 })]).toEqual([
      { twice: 8 },
      { twice: 8 },
      { twice: 10 },
    ])
    expect(counter.times).toBe(2)
  })

  it('is done anew as soon as any part of the company is another, or one is added', () => {
    interface Company {
      readonly rinse: object
      readonly product: object | null
      readonly wash?: object
    }
    const { counter, counting } = counted((_: object, company: Company) => Object.keys(company).length)
    const parts = oncePerCompany(counting)
    const [window, rinse, product] = [{}, {}, {}]
    parts(window, { rinse, product })
    parts(window, { rinse, product })
    expect(counter.times).toBe(1)
    parts(window, { rinse, product: null })
    parts(window, { rinse: {}, product: null })
    expect(parts(window, { rinse, product, wash: {} })).toBe(3)
    expect(parts({}, { rinse, product })).toBe(2)
    expect(counter.times).toBe(5)
  })
})
