import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Call, Output } from '#core/contract/contract'
import { NO_FILTER } from '#core/spend/portfolio-order'
import { Region } from '#renderer/screens/portfolio/region.svelte.ts'

beforeEach(() => vi.stubGlobal('requestAnimationFrame', (paint: () => void) => setTimeout(paint, 0)))
afterEach(() => vi.unstubAllGlobals())

const BY_NAME = { key: 'name', down: false } as const
const ROWS = JSON.stringify([1, 2].map((siteId) => ({ siteId, cost: '1.00', costPerRack: null })))
const view = (version: string): Output<'portfolio.view'> => ({
  version,
  from: 0,
  total: 2,
  rows: ROWS,
  known: 2,
  wanting: 0,
  earlier: 0,
  currencies: ['EUR'],
  products: [],
  totals: [],
})
const sums = (version: string, litres: number): Output<'portfolio.sums'> => ({
  version,
  months: [],
  products: [
    {
      productId: 'p',
      name: 'P',
      currency: 'EUR',
      sites: 1,
      litres,
      containers: 1,
      cost: '1.00',
      unknown: 0,
    },
  ],
  orders: [],
})

const value = (answer: unknown) => ({ ok: true, value: answer })

/** A host whose rows change between the answer to the view and that to the sums, or that fails the first time. */
function host({ fails = false } = {}): Call {
  let version = 'one'
  let asked = 0
  const call = async (method: string): Promise<unknown> => {
    switch (method) {
      case 'portfolio.progress':
        asked += 1
        if (fails && asked === 1) return { ok: false, problem: { code: 'unavailable', what: 'the disk' } }
        return value({ version, sites: 2, known: 2, left: 0, running: false, unread: 0, unreadSites: [] })
      case 'portfolio.view': {
        const answer = view(version)
        // a site changes right after it
        version = 'two'
        return value(answer)
      }
      case 'portfolio.sums':
        return value(sums(version, version === 'two' ? 22 : 11))
      default:
        return value({ version, from: 0, total: 2, rows: ROWS })
    }
  }
  return call as unknown as Call
}

describe('all sites in a window', () => {
  it('never shows sums of one state of the sites beside totals of another', async () => {
    const region = new Region(host(), NO_FILTER, BY_NAME)
    region.orderUntil('2026-12-31')
    await region.read()
    await vi.waitFor(() => expect(region.sums).not.toBeNull(), 30_000)
    expect([region.look?.version, region.sums?.products[0]?.litres]).toEqual(['two', 22])
  })

  it('says what failed until it is tried again and works', async () => {
    const region = new Region(host({ fails: true }), NO_FILTER, BY_NAME)
    await region.read()
    expect(region.failed).toContain('the disk')
    await region.read()
    expect([region.failed, region.look?.total]).toEqual([null, 2])
  })
})
