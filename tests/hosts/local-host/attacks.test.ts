import { Agent } from 'node:http'
import { connect, type Socket } from 'node:net'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { LIMITS } from '#main/local-host/server'
import { ask, speak, type Asked } from './raw-request'
import { run, type Running } from './running'

let running: Running
beforeAll(async () => {
  running = await run()
})
afterAll(() => running.stop())

const alive = async (): Promise<void> => {
  expect((await running.post('/rpc/host.describe', {}, running.token)).status).toBe(200)
}

const KINDS: readonly (() => Asked)[] = [
  () => ({
    method: 'POST',
    path: '/rpc/host.describe',
    headers: {
      origin: running.origin,
      'content-type': 'application/json',
      'x-dosewright-token': running.token,
    },
    body: '{}',
  }),
  () => ({}),
  () => ({ headers: { host: 'evil.example' } }),
]

describe('requests made to break things', () => {
  it.each([
    ['no request at all', 'hello\r\n\r\n'],
    ['a line that never was HTTP', '\u0000\u0001\u0002\r\n\r\n'],
    ['a method nobody knows', 'SPY / HTTP/1.1\r\nHost: x\r\n\r\n'],
    ['a version nobody knows', 'GET / HTTP/9.9\r\nHost: x\r\n\r\n'],
    ['two lengths', 'POST /rpc/x HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\nab'],
    [
      'a length and chunks',
      'POST /rpc/x HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n',
    ],
    ['a negative length', 'POST /rpc/x HTTP/1.1\r\nHost: x\r\nContent-Length: -1\r\n\r\n'],
    [
      'a chunk size that is no number',
      'POST /rpc/x HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n',
    ],
    ['a header without a name', 'GET / HTTP/1.1\r\nHost: x\r\n: x\r\n\r\n'],
    ['a header with a bare line feed', 'GET / HTTP/1.1\nHost: x\nX: y\n\n'],
    ['20 kB of headers', `GET / HTTP/1.1\r\nHost: x\r\nX: ${'y'.repeat(20_000)}\r\n\r\n`],
    ['a request target of 20 kB', `GET /${'a'.repeat(20_000)} HTTP/1.1\r\nHost: x\r\n\r\n`],
    ['an upgrade', 'GET / HTTP/1.1\r\nHost: x\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n'],
    ['a tunnel', 'CONNECT example.com:443 HTTP/1.1\r\nHost: x\r\n\r\n'],
    ['a whole address as target', 'GET http://example.com/ HTTP/1.1\r\nHost: example.com\r\n\r\n'],
  ])('%s: refused or hung up on, never served', async (_what, text) => {
    const reply = await speak(running.origin, text, 2_000)
    expect(reply).not.toMatch(/HTTP\/1\.1 (?:1|2|3)\d\d/)
    expect(reply).not.toContain('<title>')
    await alive()
  })

  it.each([
    [
      '20 kB of headers',
      (host: string) => `GET / HTTP/1.1\r\nHost: ${host}\r\nX: ${'y'.repeat(20_000)}\r\n\r\n`,
    ],
    ['a target of 20 kB', (host: string) => `GET /?${'a'.repeat(20_000)} HTTP/1.1\r\nHost: ${host}\r\n\r\n`],
  ])('%s from one who knows the address gets no further than the reading of it', async (_what, text) => {
    expect(await speak(running.origin, text(new URL(running.origin).host), 2_000)).toMatch(/^HTTP\/1\.1 400/)
    await alive()
  })

  it('a length above the limit is refused before anything of the body is sent', async () => {
    const head = [
      'POST /rpc/host.describe HTTP/1.1',
      `Host: ${new URL(running.origin).host}`,
      `Origin: ${running.origin}`,
      'Content-Type: application/json',
      `x-dosewright-token: ${running.token}`,
      'Content-Length: 2000000',
      '',
      '',
    ].join('\r\n')
    expect(await speak(running.origin, head, 3_000)).toMatch(/^HTTP\/1\.1 413/)
    await alive()
  })

  it('a length that is not kept holds up nobody else', async () => {
    const { host } = new URL(running.origin)
    const head = [
      'POST /rpc/host.describe HTTP/1.1',
      `Host: ${host}`,
      `Origin: ${running.origin}`,
      'Content-Type: application/json',
      `x-dosewright-token: ${running.token}`,
      'Content-Length: 500000',
      '',
      '{',
    ].join('\r\n')
    const waiting = speak(running.origin, head, 1_000)
    await alive()
    expect(await waiting).toBe('')
  })

  it('a body without a length is cut off at the limit', async () => {
    const { host, port, hostname } = new URL(running.origin)
    const head = [
      'POST /rpc/host.describe HTTP/1.1',
      `Host: ${host}`,
      `Origin: ${running.origin}`,
      'Content-Type: application/json',
      `x-dosewright-token: ${running.token}`,
      'Transfer-Encoding: chunked',
      '',
      '',
    ].join('\r\n')
    let sent = 0
    const reply = await new Promise<string>((resolve) => {
      let got = ''
      const chunk = `10000\r\n${'x'.repeat(65_536)}\r\n`
      const socket = connect(Number(port), hostname, () => {
        socket.write(head)
        const more = (): void => {
          if (socket.destroyed || sent > 400) return
          sent += 1
          if (socket.write(chunk)) setImmediate(more)
          else socket.once('drain', more)
        }
        more()
      })
      socket.on('data', (data) => (got += data.toString()))
      socket.on('error', () => socket.destroy())
      socket.on('close', () => resolve(got))
    })
    expect(reply).toMatch(/^HTTP\/1\.1 413/)
    await alive()
  }, 20_000)

  it('200 connections that send a letter now and then are let go, and nobody else waits for them', async () => {
    const { port, hostname } = new URL(running.origin)
    const sockets: Socket[] = []
    let closed = 0
    for (let number = 0; number < 200; number += 1) {
      const socket = connect(Number(port), hostname)
      socket.on('error', () => socket.destroy())
      socket.on('close', () => (closed += 1))
      socket.write('GET / HTTP/1.1\r\nX: ')
      sockets.push(socket)
    }
    const drip = setInterval(() => sockets.forEach((socket) => socket.writable && socket.write('a')), 500)
    await alive()
    // answered while they are still held, not once they are let go
    expect(closed).toBeLessThan(200)
    await expect.poll(() => closed, { timeout: 60_000, interval: 250 }).toBe(200)
    clearInterval(drip)
    await alive()
  }, 120_000)

  it('a body that comes a letter now and then is let go once the time for a request is over', async () => {
    expect(LIMITS.requestTimeout).toBeLessThanOrEqual(60_000)
    const hasty = await run({
      limits: { headersTimeout: 500, requestTimeout: 1_000, connectionsCheckingInterval: 100 },
    })
    const { host, port, hostname } = new URL(hasty.origin)
    const socket = connect(Number(port), hostname)
    let closed = false
    socket.on('error', () => socket.destroy())
    socket.on('close', () => (closed = true))
    const head = ['POST /rpc/host.describe HTTP/1.1', `Host: ${host}`, `Origin: ${hasty.origin}`]
    const more = [
      'Content-Type: application/json',
      `x-dosewright-token: ${hasty.token}`,
      'Content-Length: 1000',
      '',
      '{',
    ]
    socket.write([...head, ...more].join('\r\n'))
    const drip = setInterval(() => socket.writable && socket.write(' '), 200)
    await expect.poll(() => closed, { timeout: 60_000, interval: 100 }).toBe(true)
    clearInterval(drip)
    await hasty.stop()
  }, 120_000)

  it('more connections than any window opens are hung up on, and those there are still answered', async () => {
    expect(LIMITS.maxConnections).toBeLessThanOrEqual(256)
    const small = await run({ limits: { maxConnections: 20 } })
    const { port, hostname } = new URL(small.origin)
    const kept = new Agent({ keepAlive: true, maxSockets: 1 })
    const page = (): Promise<number> => ask(small.origin, { agent: kept }).then(({ status }) => status)
    expect(await page()).toBe(200)
    let closed = 0
    const sockets = Array.from({ length: 40 }, () => {
      const socket = connect(Number(port), hostname)
      socket.on('error', () => socket.destroy())
      socket.on('close', () => (closed += 1))
      return socket
    })
    await expect.poll(() => closed, { timeout: 30_000, interval: 50 }).toBeGreaterThanOrEqual(20)
    expect(await page()).toBe(200)
    for (const socket of sockets) socket.destroy()
    kept.destroy()
    await small.stop()
  }, 120_000)

  it('10,000 requests in a burst are all answered, and memory does not grow with them', async () => {
    const agent = new Agent({ keepAlive: true, maxSockets: 32 })
    const burst = async (count: number): Promise<readonly number[]> => {
      const statuses: number[] = []
      let next = 0
      const worker = async (): Promise<void> => {
        while (next < count) {
          const number = (next += 1)
          const reply = await ask(running.origin, { ...KINDS[number % 3]?.(), agent })
          statuses.push(reply.status)
        }
      }
      await Promise.all(Array.from({ length: 32 }, worker))
      return statuses
    }
    await burst(1_000)
    const before = process.memoryUsage().heapUsed
    const statuses = await burst(10_000)
    const tally = new Map<number, number>()
    for (const status of statuses) tally.set(status, (tally.get(status) ?? 0) + 1)
    expect(tally.get(200)).toBe(3_333 + 3_334)
    expect(tally.get(421)).toBe(3_333)
    expect(process.memoryUsage().heapUsed - before).toBeLessThan(100_000_000)
    agent.destroy()
    // a flood of refusals must not fill the disk with its own log
    expect(running.logged.length).toBeLessThan(100)
    await alive()
  }, 120_000)
})
