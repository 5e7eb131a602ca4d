import { describe, expect, it } from 'vitest'
import { openArchive } from '#core/documents/archive'
import type { Session } from '#renderer/state/session.svelte.ts'
import { TakeAlong } from '#renderer/screens/everything/take-along.svelte.ts'

interface Saved {
  readonly name: string
  readonly sites: readonly string[]
  readonly removed: readonly string[]
  readonly settings: string | null
  readonly length: number
}

/** A host with so many sites of so many signs; of the first answers it has not looked into the last of them yet. */
function hostWith(howMany: number, signs: number, { waitsFor = 0, removed = [] as readonly string[] } = {}) {
  const text = (id: number): string => JSON.stringify({ site: { id: `${id}` }, notes: 'x'.repeat(signs) })
  const all = Array.from({ length: howMany }, (_, id) => ({ state: 'good', id: `${id}`, name: `Site ${id}` }))
  let asked = 0
  const call = async (method: string, { id }: { readonly id?: string }) => {
    if (method === 'site.export') return { ok: true, value: { text: text(Number(id)) } }
    if (method === 'site.exportRemoved')
      return id === 'damaged'
        ? { ok: false, problem: { code: 'document-foreign' } }
        : { ok: true, value: { text: JSON.stringify({ site: { id }, notes: 'x'.repeat(signs) }) } }
    if (method === 'sites.removed')
      return {
        ok: true,
        value: {
          sites: removed.map((one) => ({ id: one, name: one, removedAt: '2026-03-01T08:00:00.000Z' })),
        },
      }
    if (method === 'settings.export') return { ok: true, value: { text: '{"format": "the settings"}' } }
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
      const archive = openArchive(text)
      if (!archive.ok) throw new Error(JSON.stringify(archive.problem))
      const { sites, removed, settings } = archive.value
      saved.push({
        name,
        sites: sites.map((one) => JSON.parse(one).site.id),
        removed: removed.map((one) => JSON.parse(one.text).site.id),
        settings,
        length: text.length,
      })
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

  it('holds the settings once, and each site taken off the list unless it stands there again', async () => {
    const removed = ['gone', 'long gone', 'gone', '2', 'damaged']
    const saved = await savedFrom(hostWith(12, 1_000, { removed }), 6_000)
    expect(saved.map(({ settings }) => settings !== null)).toEqual(saved.map((_, at) => at === 0))
    expect(saved.flatMap(({ sites }) => sites)).toEqual(ids(12))
    expect(saved.flatMap((one) => one.removed)).toEqual(['gone', 'long gone'])
    for (const { length } of saved) expect(length).toBeLessThanOrEqual(6_000)
  })
})
