import { describe, expect, it } from 'vitest'
import { sessionToken, type StartPlace } from '#renderer/client/start-code.ts'
import { MemoryStorage } from '../support/memory-host.ts'

const CODE = 'Zm9vYmFyYmF6cXV4Zm9vYmFyYmF6cXV4Zm9vYmFyYmE'

function place(hash: string, answer: Response | Error, store = new MemoryStorage()) {
  const asked: { url: string; body: string }[] = []
  const cleared: boolean[] = []
  const facts: StartPlace = {
    hash,
    clear: () => void cleared.push(true),
    store,
    fetcher: async (url, init) => {
      asked.push({ url: String(url), body: String(init?.body) })
      if (answer instanceof Error) throw answer
      return answer
    },
  }
  return { facts, asked, cleared, store }
}

describe('the start code in the address', () => {
  it('is swapped once for a token, and the address bar is cleared', async () => {
    const { facts, asked, cleared, store } = place(`#start=${CODE}`, Response.json({ token: 'secret-token' }))
    expect(await sessionToken(facts)).toBe('secret-token')
    expect(asked).toEqual([{ url: '/session', body: JSON.stringify({ code: CODE }) }])
    expect(cleared).toHaveLength(1)
    expect([...Array(store.length).keys()].map((at) => store.getItem(store.key(at) ?? ''))).toEqual([
      'secret-token',
    ])
  })

  it('leaves the address bar even when the host refuses it', async () => {
    const { facts, cleared } = place(`#start=${CODE}`, new Response('', { status: 401 }))
    expect(await sessionToken(facts)).toBeNull()
    expect(cleared).toHaveLength(1)
  })

  it('is not needed after a reload: the tab remembers its token', async () => {
    const first = place(`#start=${CODE}`, Response.json({ token: 'secret-token' }))
    await sessionToken(first.facts)
    const again = place('#/products', new Error('nobody is asked'), first.store)
    expect(await sessionToken(again.facts)).toBe('secret-token')
    expect(again.asked).toEqual([])
    expect(again.cleared).toEqual([])
  })

  it.each(['', '#/', '#/settings', '#start=', '#start=../../x', `#start=${CODE}&x=1`])(
    'a tab opened by hand at %j has no token',
    async (hash) => {
      const { facts, asked } = place(hash, Response.json({ token: 'x' }))
      expect(await sessionToken(facts)).toBeNull()
      expect(asked).toEqual([])
    },
  )

  it.each([Response.json({}), Response.json(null), new Response('<html>'), new Error('refused')])(
    'gives no token for an answer that is none',
    async (answer) => {
      expect(await sessionToken(place(`#start=${CODE}`, answer).facts)).toBeNull()
    },
  )
})
