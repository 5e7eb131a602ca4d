import { Agent, request as httpRequest } from 'node:http'
import type { Call } from '#core/contract/contract'
import type { Outcome } from '#core/outcome'
import { asCall } from '../../contract/program'
import type { Started } from '../launch/built-program'
import { codeOf } from '../local-host/running'

/** A client as fast as the host: connections are kept. A call whose host dies is `host-gone`: nobody knows its fate. */
export async function connect({ origin, address }: Started): Promise<Call> {
  const agent = new Agent({ keepAlive: true })
  const post = (path: string, body: unknown, token = ''): Promise<string | null> =>
    new Promise((resolve) => {
      const { hostname, port } = new URL(origin)
      const headers = { origin, 'content-type': 'application/json', 'x-dosewright-token': token }
      const request = httpRequest({ hostname, port, method: 'POST', path, agent, headers }, (response) => {
        const parts: Buffer[] = []
        response.on('data', (part: Buffer) => parts.push(part))
        response.on('end', () => resolve(Buffer.concat(parts).toString()))
        response.on('error', () => resolve(null))
        response.on('aborted', () => resolve(null))
      })
      request.on('error', () => resolve(null))
      request.end(JSON.stringify(body))
    })
  const session = await post('/session', { code: codeOf(address) })
  const { token } = JSON.parse(session ?? '{}') as { readonly token: string }
  return asCall(async (method, input) => {
    const reply = await post(`/rpc/${method}`, input, token)
    if (reply === null) return { ok: false, problem: { code: 'host-gone' } }
    return JSON.parse(reply) as Outcome<unknown>
  })
}
