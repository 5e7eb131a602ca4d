import { bodyInSlices, longTextIn } from './long-text'
import type { Transport } from './transport'

export const TOKEN_HEADER = 'x-dosewright-token'

/** Browsers let a request outlive its page only up to 64 kB in all. */
const KEEPALIVE_LIMIT = 60_000

/**
 * Calls the local window host. No answer, and an answer that is no JSON, mean that the program behind this page is gone;
 * a token that is not known (any more) means that this page never was, or is no longer, its window.
 */
export const httpTransport =
  (fetcher: typeof fetch, token: string): Transport =>
  async (method, input) => {
    const long = longTextIn(input)
    // without waiting for anything: a save may be on its way while the page goes
    const body = long === null ? JSON.stringify(input) : await bodyInSlices(input, long)
    try {
      const reply = await fetcher(`/rpc/${method}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', [TOKEN_HEADER]: token },
        body,
        credentials: 'omit',
        keepalive: typeof body === 'string' && body.length < KEEPALIVE_LIMIT,
      })
      if (reply.status === 401) return { ok: false, problem: { code: 'no-session' } }
      return await reply.json()
    } catch {
      return { ok: false, problem: { code: 'host-gone' } }
    }
  }
