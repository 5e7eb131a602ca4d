import { request as httpRequest, type Agent, type IncomingHttpHeaders } from 'node:http'
import { connect } from 'node:net'

export interface Reply {
  readonly status: number
  readonly headers: IncomingHttpHeaders
  readonly body: string
}

export interface Asked {
  readonly method?: string
  readonly path?: string
  readonly headers?: Readonly<Record<string, string | readonly string[]>>
  readonly body?: string | Buffer
  /** keeps connections open between requests */
  readonly agent?: Agent | undefined
}

/** One request by node:http, which sends the Host header it is given; `fetch` would drop it and prove nothing. */
export function ask(
  origin: string,
  { method = 'GET', path = '/', headers = {}, body, agent }: Asked,
): Promise<Reply> {
  const { hostname, port } = new URL(origin)
  return new Promise((resolve, reject) => {
    const request = httpRequest(
      { hostname, port, method, path, agent: agent ?? false, headers: headers as Record<string, string> },
      (response) => {
        const parts: Buffer[] = []
        response.on('data', (part: Buffer) => parts.push(part))
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            body: Buffer.concat(parts).toString(),
          }),
        )
        response.on('error', reject)
      },
    )
    request.on('error', reject)
    request.end(body)
  })
}

/** Bytes straight onto the socket, and everything that comes back until the other side hangs up. */
export function speak(origin: string, text: string, timeout = 5_000): Promise<string> {
  const { hostname, port } = new URL(origin)
  return new Promise((resolve) => {
    const parts: Buffer[] = []
    const socket = connect(Number(port), hostname, () => socket.write(text))
    socket.setTimeout(timeout, () => socket.destroy())
    socket.on('data', (part) => parts.push(part))
    socket.on('error', () => socket.destroy())
    socket.on('close', () => resolve(Buffer.concat(parts).toString()))
  })
}
