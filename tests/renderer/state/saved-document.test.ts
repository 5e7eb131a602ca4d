import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Site } from '#core/records/index'
import { newSite } from '#renderer/commands/setup/new-site.ts'
import { SavedDocument } from '#renderer/state/saved-document.svelte.ts'
import { unsentIn } from '#renderer/state/unsent.ts'
import { MemoryHost, MemoryStorage } from '../support/memory-host.ts'

const ID = '7f6b8a52-1111-4c1b-a7d4-2f51c7a0e101'
const site = newSite({
  id: ID,
  name: 'Lantern Lane Cafe',
  timeZone: 'Europe/Dublin',
  settings: { currency: 'EUR', units: 'metric' },
})

function open(host: MemoryHost, storage: Storage): SavedDocument<Site> {
  const held = host.held(`site:${ID}`)
  return new SavedDocument<Site>(
    `site:${ID}`,
    { document: structuredClone(held.document) as Site, revision: held.revision },
    {
      send: (base, changes) => host.call('site.edit', { id: ID, base, changes }),
      load: async () => {
        const reply = await host.call('site.open', { id: ID })
        return reply.ok
          ? { ok: true, value: { document: reply.value.site, revision: reply.value.revision } }
          : reply
      },
    },
    unsentIn(storage),
  )
}

const onHost = (host: MemoryHost): Site => host.held(`site:${ID}`).document as Site

describe('a document with autosave', () => {
  let host: MemoryHost
  let storage: MemoryStorage
  let document: SavedDocument<Site>

  beforeEach(() => {
    vi.useFakeTimers()
    host = new MemoryHost([site])
    storage = new MemoryStorage()
    document = open(host, storage)
  })
  afterEach(() => {
    vi.useRealTimers()
  })

  it('sends several quick edits as one, half a second after the last', async () => {
    document.set({ ...document.content, name: 'A' })
    await vi.advanceTimersByTimeAsync(400)
    document.set({ ...document.content, notes: 'key at the bar' })
    expect(document.save.kind).toBe('waiting')
    await vi.advanceTimersByTimeAsync(499)
    expect(host.edits()).toBe(0)
    await vi.advanceTimersByTimeAsync(1)
    expect(host.edits()).toBe(1)
    expect(onHost(host)).toEqual({ ...site, name: 'A', notes: 'key at the bar' })
    expect(document.save).toEqual({ kind: 'saved', at: '2026-11-02T14:05:00.000Z' })
  })

  it('does not wait for ever while somebody keeps typing', async () => {
    for (let key = 0; key < 30; key += 1) {
      document.set({ ...document.content, notes: 'x'.repeat(key + 1) })
      await vi.advanceTimersByTimeAsync(200)
    }
    expect(host.edits()).toBeGreaterThanOrEqual(2)
  })

  it('sends what was typed during a slow save as well', async () => {
    host.delay = 300
    document.set({ ...document.content, name: 'first' })
    await vi.advanceTimersByTimeAsync(600)
    expect(document.save.kind).toBe('saving')
    document.set({ ...document.content, name: 'second' })
    await vi.advanceTimersByTimeAsync(2000)
    expect(onHost(host).name).toBe('second')
    expect(document.save.kind).toBe('saved')
  })

  it('never takes its own save for somebody else’s, however often saving is asked for', async () => {
    host.delay = 50
    const asked: Promise<void>[] = []
    for (const name of ['a', 'b', 'c', 'd']) {
      document.set({ ...document.content, name })
      asked.push(document.flush(), document.flush())
      await vi.advanceTimersByTimeAsync(20)
    }
    await vi.advanceTimersByTimeAsync(3000)
    await Promise.all(asked)
    expect(onHost(host).name).toBe('d')
    expect(host.calls.some(({ method }) => method === 'site.open')).toBe(false)
    expect(document.save.kind).toBe('saved')
  })

  it('keeps edits while the host is away, says so, and saves them when it is back', async () => {
    host.away = true
    document.set({ ...document.content, name: 'typed while away' })
    await vi.advanceTimersByTimeAsync(1000)
    expect(document.save).toEqual({ kind: 'not-saved', problem: { code: 'host-gone' } })
    document.set({ ...document.content, notes: 'and more' })
    await vi.advanceTimersByTimeAsync(20_000)
    expect(document.content).toMatchObject({ name: 'typed while away', notes: 'and more' })
    host.away = false
    await vi.advanceTimersByTimeAsync(10_000)
    expect(onHost(host)).toMatchObject({ name: 'typed while away', notes: 'and more' })
    expect(document.save.kind).toBe('saved')
  })

  it('shows why a write failed and tries again', async () => {
    host.refusal = 'the disk is full'
    document.set({ ...document.content, name: 'B' })
    await vi.advanceTimersByTimeAsync(600)
    expect(document.save).toEqual({
      kind: 'not-saved',
      problem: { code: 'not-saved', reason: 'the disk is full' },
    })
    host.refusal = null
    await vi.advanceTimersByTimeAsync(1000)
    expect(document.save.kind).toBe('saved')
  })

  it('gives unsent edits back after a reload of the page', async () => {
    host.away = true
    document.set({ ...document.content, name: 'before the reload' })
    document.park()
    host.away = false
    const again = open(host, storage)
    expect(again.content.name).toBe('before the reload')
    await vi.advanceTimersByTimeAsync(600)
    expect(onHost(host).name).toBe('before the reload')
    expect(storage.length).toBe(0)
  })

  it('does not repeat edits that had arrived although their answer got lost', async () => {
    document.set({ ...document.content, name: 'arrived' })
    document.park()
    host.editElsewhere(`site:${ID}`, (held: Site) => ({ ...held, name: 'arrived' }))
    const again = open(host, storage)
    expect(again.unsaved).toBe(false)
    expect(again.conflict).toBeNull()
    expect(storage.length).toBe(0)
  })

  it('joins edits of two windows that touched different places', async () => {
    host.editElsewhere(`site:${ID}`, (held: Site) => ({ ...held, currency: 'USD' }))
    document.set({ ...document.content, name: 'C' })
    await vi.advanceTimersByTimeAsync(1500)
    expect(onHost(host)).toEqual({ ...site, currency: 'USD', name: 'C' })
    expect(document.content.currency).toBe('USD')
    expect(document.save.kind).toBe('saved')
  })

  it('asks when two windows changed the same entry, and does what is answered', async () => {
    for (const choice of ['mine', 'theirs'] as const) {
      const name = `theirs for ${choice}`
      host.editElsewhere(`site:${ID}`, (held: Site) => ({ ...held, name }))
      document.set({ ...document.content, name: `mine for ${choice}` })
      await vi.advanceTimersByTimeAsync(3000)
      expect(document.conflict?.document.name).toBe(name)
      expect(document.content.name).toBe(`mine for ${choice}`)
      expect(onHost(host).name).toBe(name)
      await document.settle(choice)
      expect(onHost(host).name).toBe(choice === 'mine' ? 'mine for mine' : name)
      expect(document.content.name).toBe(onHost(host).name)
      expect(document.save.kind).toBe('saved')
    }
  })
})
