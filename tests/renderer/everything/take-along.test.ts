import { describe, expect, it } from 'vitest'
import { filesOf } from '#core/documents/archive'
import type { Session } from '#renderer/state/session.svelte.ts'
import { TakeAlong } from '#renderer/screens/everything/take-along.svelte.ts'

interface Saved {
  readonly name: string
  readonly sites: readonly string[]
  readonly length: number
}

/** A host with so many sites of so many signs; of the first answers it has not looked into the last of them yet. */
function hostWith(howMany: number, signs: number, { waitsFor = 0 } = {}) {
  const text = (id: number): string => JSON.stringify({ site: { id: `${id}` }, notes: 'x'.repeat(signs) })
  const all = Array.from({ length: howMany }, (_, id) => ({ state: 'good', id: `${id}`, name: `Site ${id}` }))
  let asked = 0
  const call = async (method: string, { id }: { readonly id?: string }) => {
    if (method === 'site.export') return { ok: true, value: { text: text(Number(id)) } }
    asked += 1
    return asked > waitsFor
      ? { ok: true, value: { sites: all, waiting: 0 } }
      : { ok: true, value: { sites: all.slice(0, -2), waiting: 2 } }
  }
  return { call, workspace: { flush: async () => {} }, products: [], instruments: [], today: '2026-03-02' }
}

async function savedFrom(host: ReturnType<typeof hostWith>, most?: number): Promise<readonly Saved[]> {
  const saved: Saved[] = []
  const take = new TakeAlong(
    host as unknown as Session,
    (name, text) => {
      const files = filesOf(text)
      const sites = files.ok ? files.value : []
      saved.push({ name, sites: sites.map((one) => JSON.parse(one).site.id), length: text.length })
    },
    most,
  )
  await take.start()
  expect(take.stage).toMatchObject({ kind: 'done', files: saved.length })
  return saved
}

const ids = (howMany: number): readonly string[] => Array.from({ length: howMany }, (_, id) => `${id}`)

describe('everything saved', () => {
  it('is one file while it can be read in again', async () => {
    const saved = await savedFrom(hostWith(5, 100))
    expect(saved).toMatchObject([{ name: 'everything 2026-03-02.dosewright.json', sites: ids(5) }])
  })

  it('is as many files as it takes, each small enough, and holds every site once, in order', async () => {
    const saved = await savedFrom(hostWith(23, 1_000), 6_000)
    expect(saved.length).toBeGreaterThan(3)
    expect(saved.map(({ name }) => name)).toEqual(
      saved.map((_, at) => `everything 2026-03-02, part ${at + 1}.dosewright.json`),
    )
    expect(saved.flatMap(({ sites }) => sites)).toEqual(ids(23))
    for (const { length } of saved) expect(length).toBeLessThanOrEqual(6_000)
  })

  it('waits for sites that nobody has looked into yet, and leaves none of them out', async () => {
    const saved = await savedFrom(hostWith(4, 10, { waitsFor: 2 }))
    expect(saved.flatMap(({ sites }) => sites)).toEqual(ids(4))
  })
})
