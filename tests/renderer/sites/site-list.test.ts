import { setTimeout as wait } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import type { Session } from '#renderer/state/session.svelte.ts'
import { SiteList } from '#renderer/screens/sites/site-list.svelte.ts'

const NAMES = ['Harbour bar', 'Harbour canteen', 'Mill kitchen']
const row = (name: string) => ({ state: 'newer', id: name, version: 9 })

function answer(method: string, { words = '' }: { readonly words?: string }): unknown {
  if (method === 'sites.removed') return { ok: true, value: { sites: [] } }
  const rows = NAMES.filter((name) => name.toLowerCase().includes(words)).map(row)
  return { ok: true, value: { version: 'one', sites: 3, readable: 3, waiting: 0, total: rows.length, rows } }
}

/** A session whose host takes so many ms for each look at the list in turn, then none. */
function slowSession(...delays: number[]): Session {
  const call = async (method: string, input: { readonly words?: string }) => {
    if (method === 'sites.view') await wait(delays.shift() ?? 0)
    return answer(method, input)
  }
  return { call, workspace: { flush: async () => {} } } as unknown as Session
}

/** A session whose host is still reading one more site, always. */
const readingSession = {
  call: async (method: string) => {
    const given = method === 'site.restore' ? { ok: true, value: {} } : answer(method, {})
    const { ok, value } = given as { readonly ok: boolean; readonly value: object }
    return { ok, value: { ...value, waiting: 1 } }
  },
  workspace: { flush: async () => {} },
} as unknown as Session

describe('the list of sites', () => {
  it('shows what was typed into its search while it was still being fetched', async () => {
    const list = new SiteList(slowSession(40))
    const loaded = list.load()
    await wait(10)
    await list.find('harbour')
    await loaded
    expect(list.look).toMatchObject({ words: 'harbour', total: 2 })
  })

  it('shows what was typed while it was fetched anew, though that answer comes last', async () => {
    const list = new SiteList(slowSession(0, 0, 60))
    await list.load()
    await list.find('harbour')
    const again = list.load()
    await wait(10)
    await list.find('mill')
    await again
    expect(list.look).toMatchObject({ words: 'mill', total: 1 })
  })

  it('leads the keyboard to a restored site at once, though more sites are still being read', async () => {
    const led: unknown[] = []
    const list = new SiteList(readingSession, (to) => led.push(to))
    await list.restore('Mill kitchen', 'Mill kitchen')
    expect(led).toEqual([{ id: 'Mill kitchen' }])
    expect(list.look?.waiting).toBe(1)
    list.leave()
  })
})
