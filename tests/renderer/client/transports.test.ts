import { describe, expect, it } from 'vitest'
import { METHODS } from '#core/contract/methods'
import type { Bridge } from '#renderer/client/bridge.ts'
import { bridgeTransport } from '#renderer/client/bridge.ts'
import { httpTransport } from '#renderer/client/http.ts'

const GONE = { ok: false, problem: { code: 'host-gone' } }

describe('calls to the local window host', () => {
  it('post JSON with the token in its own header and no cookies', async () => {
    const seen: { url: string; init: RequestInit }[] = []
    const call = httpTransport(async (url, init) => {
      seen.push({ url: String(url), init: init ?? {} })
      return Response.json({ ok: true, value: { sites: [] } })
    }, 'token-1')
    expect(await call('sites.list', {})).toEqual({ ok: true, value: { sites: [] } })
    expect(seen[0]?.url).toBe('/rpc/sites.list')
    expect(seen[0]?.init).toMatchObject({
      method: 'POST',
      body: '{}',
      credentials: 'omit',
      headers: { 'content-type': 'application/json', 'x-dosewright-token': 'token-1' },
    })
  })

  it('may outlive the page while small, and only then', async () => {
    const kept: (boolean | undefined)[] = []
    const call = httpTransport(async (_url, init) => {
      kept.push(init?.keepalive)
      return Response.json({ ok: true, value: null })
    }, 't')
    await call('site.edit', { changes: [] })
    await call('site.import', { text: 'x'.repeat(70_000) })
    expect(kept).toEqual([true, false])
  })

  it.each([
    ['nobody answers', new Error('refused'), GONE],
    ['the answer is no JSON', new Response('<html>502</html>', { status: 502 }), GONE],
    [
      'the token is not known',
      new Response('{}', { status: 401 }),
      { ok: false, problem: { code: 'no-session' } },
    ],
  ])('%s: a problem, never an exception', async (_case, answer, expected) => {
    const call = httpTransport(async () => {
      if (answer instanceof Error) throw answer
      return answer
    }, 't')
    expect(await call('sites.list', {})).toEqual(expected)
  })
})

describe('calls through the desktop bridge', () => {
  it('go to the function of their name; a broken bridge is a host that is gone', async () => {
    const bridge = Object.fromEntries(
      METHODS.map((method) => [
        method,
        async (input: unknown) => {
          if (method === 'demo.add') throw new Error('window closed')
          return { ok: true, value: [method, input] }
        },
      ]),
    ) as Bridge
    const call = bridgeTransport(bridge)
    expect(await call('site.open', { id: 'x' })).toEqual({ ok: true, value: ['site.open', { id: 'x' }] })
    expect(await call('demo.add', {})).toEqual(GONE)
  })
})
