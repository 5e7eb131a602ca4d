import { readFileSync, readdirSync, statSync } from 'node:fs'
import { connect } from 'node:net'
import { networkInterfaces } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { METHODS } from '#core/contract/contract'
import { CONTENT_SECURITY_POLICY } from '#main/static-files/headers'
import { STATIC_PATHS } from '../static-paths'
import { ask, speak, type Asked, type Reply } from './raw-request'
import { codeOf, run, type Running } from './running'

let running: Running
beforeAll(async () => {
  running = await run()
})
afterAll(() => running.stop())

const good = (): Record<string, string> => ({
  origin: running.origin,
  'content-type': 'application/json',
  'x-dosewright-token': running.token,
})
const describeCall = (headers: Record<string, string>, changes: Asked = {}): Asked => ({
  method: 'POST',
  path: '/rpc/host.describe',
  headers,
  body: '{}',
  ...changes,
})
const without = (name: string): Record<string, string> =>
  Object.fromEntries(Object.entries(good()).filter(([key]) => key !== name))

describe('where the local window host listens', () => {
  it('is loopback only', async () => {
    expect(new URL(running.origin).hostname).toBe('127.0.0.1')
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter((one) => !one.internal && one.family === 'IPv4')
    for (const { address } of others) {
      const reached = await new Promise<string>((resolve) => {
        const socket = connect(Number(new URL(running.origin).port), address, () => resolve('connected'))
        socket.on('error', (error: NodeJS.ErrnoException) => resolve(error.code ?? ''))
      })
      expect(reached).toBe('ECONNREFUSED')
    }
  })

  it('is another port and another token at every start', async () => {
    const other = await run()
    expect(other.origin).not.toBe(running.origin)
    expect(other.token).not.toBe(running.token)
    expect((await ask(other.origin, describeCall({ ...good(), origin: other.origin }))).status).toBe(401)
    await other.stop()
  })
})

const port = (): string => new URL(running.origin).port

describe('what is refused, and how', () => {
  const table: readonly (readonly [string, number, () => Asked])[] = [
    ['the page', 200, () => ({})],
    ['the page, only its head', 200, () => ({ method: 'HEAD' })],
    ['a call with everything right', 200, () => describeCall(good())],
    ['a rebound name', 421, () => ({ headers: { host: `evil.example:${port()}` } })],
    ['the right name with another port', 421, () => ({ headers: { host: '127.0.0.1:1' } })],
    ['localhost by name', 421, () => ({ headers: { host: `localhost:${port()}` } })],
    ['no port', 421, () => ({ headers: { host: '127.0.0.1' } })],
    ['a rebound name on a file', 421, () => ({ path: '/assets/main.js', headers: { host: 'evil.example' } })],
    ['a rebound name on a call', 421, () => describeCall({ ...good(), host: `evil.example:${port()}` })],
    ['another port as origin', 403, () => describeCall({ ...good(), origin: 'http://127.0.0.1:1' })],
    ['https as origin', 403, () => describeCall({ ...good(), origin: `https://127.0.0.1:${port()}` })],
    ['localhost as origin', 403, () => describeCall({ ...good(), origin: `http://localhost:${port()}` })],
    ['the origin null', 403, () => describeCall({ ...good(), origin: 'null' })],
    ['no origin on a call', 403, () => describeCall(without('origin'))],
    ['a foreign origin on the page', 403, () => ({ headers: { origin: 'http://evil.example' } })],
    ['a call from another site', 403, () => describeCall({ ...good(), 'sec-fetch-site': 'cross-site' })],
    [
      'a call from the same site, another port',
      403,
      () => describeCall({ ...good(), 'sec-fetch-site': 'same-site' }),
    ],
    ['a call typed by hand', 403, () => describeCall({ ...good(), 'sec-fetch-site': 'none' })],
    ['a call from the page', 200, () => describeCall({ ...good(), 'sec-fetch-site': 'same-origin' })],
    ['a link to the page on another site', 403, () => ({ headers: { 'sec-fetch-site': 'cross-site' } })],
    ['the address typed by hand', 200, () => ({ headers: { 'sec-fetch-site': 'none' } })],
    [
      'a script file used by another page',
      403,
      () => ({ path: '/assets/main.js', headers: { 'sec-fetch-site': 'cross-site' } }),
    ],
    [
      'a script file opened by hand',
      403,
      () => ({ path: '/assets/main.js', headers: { 'sec-fetch-site': 'none' } }),
    ],
    [
      'a preflight from another page',
      403,
      () => ({
        method: 'OPTIONS',
        path: '/rpc/host.describe',
        headers: { origin: 'http://evil.example', 'access-control-request-method': 'POST' },
      }),
    ],
    [
      'a preflight from the page',
      405,
      () => ({ method: 'OPTIONS', path: '/rpc/host.describe', headers: { origin: running.origin } }),
    ],
    ['a form', 415, () => describeCall({ ...good(), 'content-type': 'text/plain' })],
    [
      'an encoded form',
      415,
      () => describeCall({ ...good(), 'content-type': 'application/x-www-form-urlencoded' }),
    ],
    ['no type', 415, () => describeCall(without('content-type'))],
    [
      'JSON in another character set',
      415,
      () => describeCall({ ...good(), 'content-type': 'application/json; charset=utf-16' }),
    ],
    [
      'JSON that names UTF-8',
      200,
      () => describeCall({ ...good(), 'content-type': 'application/json; charset=utf-8' }),
    ],
    ['a call by GET', 405, () => ({ path: '/rpc/host.describe', headers: good() })],
    ['a call by PUT', 405, () => describeCall(good(), { method: 'PUT' })],
    ['a file by POST', 405, () => describeCall(good(), { path: '/index.html' })],
    ['a file by DELETE', 405, () => ({ method: 'DELETE' })],
    ['no token', 401, () => describeCall(without('x-dosewright-token'))],
    ['an empty token', 401, () => describeCall({ ...good(), 'x-dosewright-token': '' })],
    ['a short token', 401, () => describeCall({ ...good(), 'x-dosewright-token': running.token.slice(1) })],
    [
      'a token with one letter changed',
      401,
      () => describeCall({ ...good(), 'x-dosewright-token': changed(running.token) }),
    ],
    [
      'a token in other bytes of the same length',
      401,
      () => describeCall({ ...good(), 'x-dosewright-token': 'é'.repeat(running.token.length) }),
    ],
    ['a body that is no JSON', 400, () => describeCall(good(), { body: '{' })],
    ['an empty body', 400, () => describeCall(good(), { body: '' })],
    ['a body that is not UTF-8', 400, () => describeCall(good(), { body: Buffer.from([0x22, 0xff, 0x22]) })],
    ['a body with a prototype name', 400, () => describeCall(good(), { body: '{"__proto__":{}}' })],
    ['a body with a key twice', 400, () => describeCall(good(), { body: '{"a":1,"a":2}' })],
    ['a body of more than 1 MB', 413, () => describeCall(good(), { body: `"${'x'.repeat(1_000_000)}"` })],
    [
      'a start code of more than 1 kB',
      413,
      () => describeCall(good(), { path: '/session', body: `"${'x'.repeat(1_000)}"` }),
    ],
    [
      'two tokens',
      400,
      () => describeCall({ ...good(), 'x-dosewright-token': [running.token, 'x'] as unknown as string }),
    ],
  ]

  it.each(table)('%s: %i', async (_what, status, asked) => {
    const reply = await ask(running.origin, asked())
    expect(reply.status).toBe(status)
    // RFC 9110 section 15.5.6: a 405 says which methods there are
    expect(reply.headers.allow).toEqual(
      status === 405 ? expect.stringMatching(/^(?:POST|GET, HEAD)$/) : undefined,
    )
    never(reply)
  })

  // the same table as for the app: protocol of the desktop window
  it.each(STATIC_PATHS)('the file %s: %i', async (path, status) => {
    const reply = await ask(running.origin, { path })
    expect(reply.status).toBe(status)
    never(reply)
    if (status !== 200) expect(reply.body).not.toContain('title')
  })

  it('two Host headers are refused, whichever comes first', async () => {
    const { host } = new URL(running.origin)
    for (const pair of [
      [host, 'evil.example'],
      ['evil.example', host],
    ])
      expect(
        await speak(running.origin, `GET / HTTP/1.1\r\nHost: ${pair[0]}\r\nHost: ${pair[1]}\r\n\r\n`, 1_000),
      ).toMatch(/^HTTP\/1.1 4(?:00|21)/)
  })

  it('every other path of HTTP/1.0 without a Host gets nothing', async () => {
    expect(await speak(running.origin, 'GET / HTTP/1.0\r\n\r\n')).toMatch(/^HTTP\/1.1 421/)
    expect(await speak(running.origin, 'GET / HTTP/1.1\r\n\r\n')).toMatch(/^HTTP\/1.1 400/)
  })
})

/** What no answer may ever carry, and what every one must. */
function never({ headers }: Reply): void {
  expect(Object.keys(headers).filter((name) => name.startsWith('access-control-'))).toEqual([])
  expect(headers['set-cookie']).toBeUndefined()
  expect(headers['x-powered-by']).toBeUndefined()
  expect(headers).toMatchObject({
    'content-security-policy': CONTENT_SECURITY_POLICY,
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'cache-control': 'no-store',
  })
}

const changed = (token: string): string => (token.startsWith('a') ? 'b' : 'a') + token.slice(1)

describe('the policy of the page', () => {
  // directives: Content Security Policy Level 3, section 6
  it('allows its own files and pictures in data: addresses, and nothing else: nothing from outside, nothing inline, no frames', () => {
    const directives = Object.fromEntries(
      CONTENT_SECURITY_POLICY.split('; ').map((part) => [part.split(' ')[0], part.split(' ').slice(1)]),
    )
    expect(directives).toEqual({
      'default-src': ["'none'"],
      'script-src': ["'self'"],
      'style-src': ["'self'"],
      'img-src': ["'self'", 'data:'],
      'font-src': ["'self'"],
      'connect-src': ["'self'"],
      'base-uri': ["'none'"],
      'form-action': ["'none'"],
      'frame-ancestors': ["'none'"],
      'object-src': ["'none'"],
    })
  })
})

describe('the start code', () => {
  it('stands in the fragment of the address, which no server and no log ever sees', () => {
    const address = new URL(running.host.startAddress())
    expect(address.search + address.pathname).toBe('/')
    expect(address.hash).toMatch(/^#start=[\w-]{43}$/)
  })

  it('works once', async () => {
    const code = codeOf(running.host.startAddress())
    const first = await running.post('/session', { code })
    expect([first.status, JSON.parse(first.body)]).toEqual([200, { token: running.token }])
    never(first)
    expect((await running.post('/session', { code })).status).toBe(401)
  })

  it('is void as soon as another is asked for', async () => {
    const first = codeOf(running.host.startAddress())
    const second = codeOf(running.host.startAddress())
    expect((await running.post('/session', { code: first })).status).toBe(401)
    expect((await running.post('/session', { code: second })).status).toBe(200)
  })

  it('works for one minute', async () => {
    let now = 0
    const timed = await run({ now: () => now })
    const early = codeOf(timed.host.startAddress())
    now = 60_000
    expect((await timed.post('/session', { code: early })).status).toBe(200)
    const late = codeOf(timed.host.startAddress())
    now = 120_001
    expect((await timed.post('/session', { code: late })).status).toBe(401)
    await timed.stop()
  })

  it.each([{}, { code: 7 }, { code: '' }, { code: null }, [], null, '"x"'])('%j is none', async (body) => {
    const other = await run()
    expect((await other.post('/session', body)).status).toBe(401)
    await other.stop()
  })
})

describe('somebody who guesses', () => {
  it('is answered slower after 20 wrong tokens, and gets no data after 40, not even with the right one', async () => {
    const guessed = await run()
    const guess = (): ReturnType<typeof ask> => guessed.post('/rpc/host.describe', {}, changed(guessed.token))
    for (let tries = 0; tries < 20; tries += 1) expect((await guess()).status).toBe(401)
    expect((await guessed.post('/rpc/host.describe', {}, guessed.token)).status).toBe(200)
    const started = performance.now()
    expect((await guess()).status).toBe(401)
    expect(performance.now() - started).toBeGreaterThan(400)
    await Promise.all(Array.from({ length: 19 }, guess))
    expect((await guess()).status).toBe(503)
    expect((await guessed.post('/rpc/host.describe', {}, guessed.token)).status).toBe(503)
    expect((await guessed.post('/session', { code: codeOf(guessed.host.startAddress()) })).status).toBe(503)
    expect((await ask(guessed.origin, {})).status).toBe(200)
    await guessed.stop()
  })

  it('is shut out as well when it is start codes that are guessed', async () => {
    const guessed = await run()
    const guess = async (): Promise<number> =>
      (await guessed.post('/session', { code: 'x'.repeat(43) })).status
    expect(await Promise.all(Array.from({ length: 40 }, guess))).toEqual(
      Array.from({ length: 40 }, () => 401),
    )
    expect(await guess()).toBe(503)
    expect((await guessed.post('/session', { code: codeOf(guessed.host.startAddress()) })).status).toBe(503)
    await guessed.stop()
  })

  it('does not get in the way by knocking without any token', async () => {
    const knocked = await run()
    for (let tries = 0; tries < 60; tries += 1)
      expect((await knocked.post('/rpc/host.describe', {})).status).toBe(401)
    expect((await knocked.post('/rpc/host.describe', {}, knocked.token)).status).toBe(200)
    await knocked.stop()
  })
})

describe('what leaks', () => {
  it('is neither stack nor path when a service breaks, only a reference that the log explains', async () => {
    const broken = await run({
      dispatch: async () => {
        throw new Error('secret detail')
      },
    })
    const reply = await broken.post('/rpc/host.describe', {}, broken.token)
    expect(reply.status).toBe(500)
    expect(reply.body).not.toMatch(/secret|at |\/|Error/)
    expect(broken.logged.join('\n')).toContain('secret detail')
    await broken.stop()
  })

  it('is no token and no code: neither the log nor the data folder has them', async () => {
    const quiet = await run()
    const code = codeOf(quiet.host.startAddress())
    await quiet.post('/session', { code })
    await quiet.post('/rpc/demo.add', {}, quiet.token)
    await quiet.post('/rpc/host.describe', {}, changed(quiet.token))
    const texts = readdirSync(quiet.folder, { recursive: true, encoding: 'utf8' })
      .map((name) => join(quiet.folder, name))
      .filter((path) => statSync(path).isFile())
      .map((path) => readFileSync(path, 'utf8'))
    expect(texts.length).toBeGreaterThan(4)
    for (const text of [...texts, ...quiet.logged]) {
      expect(text).not.toContain(quiet.token)
      // nor one that was nearly right
      expect(text).not.toContain(changed(quiet.token))
      expect(text).not.toContain(code)
    }
    expect(quiet.logged.length).toBeGreaterThan(0)
    await quiet.stop()
  })

  it('every method asks for the token', async () => {
    for (const method of METHODS)
      expect([method, (await running.post(`/rpc/${method}`, {})).status]).toEqual([method, 401])
  })
})
