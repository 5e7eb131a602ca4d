import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { setTimeout as wait } from 'node:timers/promises'
import { fail, type Outcome } from '#core/outcome'
import type { Problem } from '#core/problem'
import type { Dispatch } from '../dispatch'
import { parseBody } from '../reading/parse-body'
import { findFile } from '../static-files/find'
import { SECURITY_HEADERS } from '../static-files/headers'
import type { Manifest } from '../static-files/manifest'
import { bodyLimit, readBody } from './body'
import { inspect, type Route } from './guard'
import { Session } from './session'

export interface LocalHostOptions {
  readonly dispatch: Dispatch
  /** how the bytes of a body become a value; in this thread when nothing else is said */
  readonly parse?: (bytes: Buffer, method: string) => Promise<Outcome<unknown>>
  /** asked for every file, so that a rebuilt page can be served while developing */
  readonly files: () => Manifest
  readonly log: (line: string) => void
  /** ms that only ever go forward, for the life of a start code */
  readonly now?: () => number
  readonly limits?: Partial<typeof LIMITS>
}

export interface LocalHost {
  /** `http://127.0.0.1:<port>` */
  readonly origin: string
  /** an address that opens the program once, within a minute */
  readonly startAddress: () => string
  readonly close: () => Promise<void>
}

/** Loopback only, on a free port: there is no option for another address. */
const LOOPBACK = '127.0.0.1'
/** What one who calls slowly, or too often at once, may take of the program. Times in ms. */
export const LIMITS = {
  headersTimeout: 10_000,
  requestTimeout: 60_000,
  keepAliveTimeout: 5_000,
  maxHeaderSize: 16_384,
  connectionsCheckingInterval: 1_000,
  maxConnections: 256,
} satisfies Readonly<Record<string, number>>

/** Refusals written to the log; a burst of them must not fill the disk. */
const LOGGED_REFUSALS = 50

export async function startLocalHost(options: LocalHostOptions): Promise<LocalHost> {
  const session = new Session(options.now ?? (() => performance.now()))
  const host = new Host(options, session)
  const { maxConnections, ...limits } = { ...LIMITS, ...options.limits }
  const server = createServer(limits, (request, response) => void host.answer(request, response))
  server.maxConnections = maxConnections
  server.on('clientError', (_error, socket) => {
    if (socket.writable)
      socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\nContent-Length: 0\r\n\r\n')
    // ending is only our half: one who never hangs up would keep the connection
    setTimeout(() => socket.destroy(), 200).unref()
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen({ host: LOOPBACK, port: 0, exclusive: true }, resolve)
  })
  host.ownHost = `${LOOPBACK}:${(server.address() as AddressInfo).port}`
  const origin = `http://${host.ownHost}`
  return {
    origin,
    startAddress: () => `${origin}/#start=${session.issueCode()}`,
    close: () => stop(server),
  }
}

const stop = (server: Server): Promise<void> =>
  new Promise((resolve) => {
    server.close(() => resolve())
    server.closeIdleConnections()
    // answers under way get a moment to finish
    setTimeout(() => server.closeAllConnections(), 1_000).unref()
  })

class Host {
  readonly #options: LocalHostOptions
  readonly #session: Session
  ownHost = ''
  #refusals = 0

  constructor(options: LocalHostOptions, session: Session) {
    this.#options = options
    this.#session = session
  }

  async answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    try {
      await this.#route(request, response)
    } catch (error) {
      // the sender hung up, or a bug in this file; either way nothing of it goes out
      if (!request.socket.destroyed)
        this.#options.log(error instanceof Error ? (error.stack ?? error.message) : String(error))
      if (!response.headersSent) sendText(response, 500, 'Something went wrong.')
      else response.destroy()
    }
  }

  async #route(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const verdict = inspect({
      method: request.method ?? '',
      path: request.url ?? '',
      rawHeaders: request.rawHeaders,
      ownHost: this.ownHost,
    })
    if (!verdict.pass) {
      this.#note(verdict.status, verdict.why)
      if (verdict.allow !== undefined) response.setHeader('Allow', verdict.allow)
      return refuseBody(request, response, verdict.status, `Refused: ${verdict.why}.`)
    }
    if (verdict.route.kind === 'file') return this.#file(request, response)
    if (this.#session.isShut()) {
      this.#note(503, 'too many wrong tokens')
      return refuseBody(request, response, 503, problem({ code: 'no-session' }))
    }
    if (verdict.route.kind === 'rpc' && !this.#session.admits(verdict.token))
      return this.#unknownCaller(request, response)
    return this.#call(verdict.route, request, response)
  }

  #file(request: IncomingMessage, response: ServerResponse): void {
    const found = findFile(this.#options.files(), request.url ?? '')
    if (found.file === null)
      return sendText(response, found.status, found.status === 404 ? 'Not here.' : 'Refused.')
    const { type, bytes } = found.file
    response.writeHead(200, { ...SECURITY_HEADERS, 'Content-Type': type, 'Content-Length': bytes.length })
    response.end(request.method === 'HEAD' ? undefined : bytes)
  }

  async #call(
    route: Exclude<Route, { kind: 'file' }>,
    request: IncomingMessage,
    response: ServerResponse,
  ): Promise<void> {
    const bytes = await readBody(request, route.kind === 'rpc' ? bodyLimit(route.method) : 1_000)
    if (bytes === null) {
      this.#note(413, 'the body is too large')
      return refuseBody(
        request,
        response,
        413,
        problem({ code: 'bad-request', place: 'body', reason: 'is too large' }),
      )
    }
    const body = await (this.#options.parse ?? parseBody)(bytes, route.kind === 'rpc' ? route.method : '')
    if (!body.ok) return sendJson(response, 400, body)
    if (route.kind === 'rpc')
      return sendJson(response, 200, await this.#options.dispatch(route.method, body.value))
    const token = this.#session.redeem(codeOf(body.value))
    return token === null ? this.#unknownCaller(request, response) : sendJson(response, 200, { token })
  }

  async #unknownCaller(request: IncomingMessage, response: ServerResponse): Promise<void> {
    this.#note(401, 'the token or start code is not known')
    await wait(this.#session.penalty())
    return refuseBody(request, response, 401, problem({ code: 'no-session' }))
  }

  #note(status: number, why: string): void {
    this.#refusals += 1
    if (this.#refusals <= LOGGED_REFUSALS) this.#options.log(`refused (${status}): ${why}`)
    if (this.#refusals === LOGGED_REFUSALS) this.#options.log('further refusals are not listed')
  }
}

const codeOf = (body: unknown): string =>
  typeof body === 'object' && body !== null && 'code' in body && typeof body.code === 'string'
    ? body.code
    : ''

const problem = (problem: Problem): Outcome<never> => fail(problem)

/** Answers at once. What is still coming in is thrown away for a moment, so that the answer arrives, then cut off. */
function refuseBody(
  request: IncomingMessage,
  response: ServerResponse,
  status: number,
  body: string | object,
): void {
  if (!request.complete) {
    response.setHeader('Connection', 'close')
    request.resume()
    setTimeout(() => request.destroy(), 1_000).unref()
  }
  if (typeof body === 'string') sendText(response, status, body)
  else sendJson(response, status, body)
}

function sendText(response: ServerResponse, status: number, text: string): void {
  send(response, status, 'text/plain; charset=utf-8', text)
}

function sendJson(response: ServerResponse, status: number, body: unknown): void {
  send(response, status, 'application/json; charset=utf-8', JSON.stringify(body))
}

function send(response: ServerResponse, status: number, type: string, text: string): void {
  const bytes = Buffer.from(text)
  response.writeHead(status, { ...SECURITY_HEADERS, 'Content-Type': type, 'Content-Length': bytes.length })
  response.end(bytes)
}
