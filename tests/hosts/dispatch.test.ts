import { describe, expect, it } from 'vitest'
import type { Services } from '#core/contract/contract'
import { ok } from '#core/outcome'
import { dispatcher } from '#main/dispatch'

const withDescribe = (describe: () => unknown) => {
  const logged: string[] = []
  const services = { 'host.describe': async () => describe() } as unknown as Services
  return { call: dispatcher(services, (line) => logged.push(line)), logged }
}

describe('a bug behind a call', () => {
  it('reaches the caller as a reference number alone, and the log with its stack', async () => {
    const { call, logged } = withDescribe(() => {
      throw new Error('secret detail')
    })
    const reply = await call('host.describe', {})
    expect(reply).toEqual({
      ok: false,
      problem: { code: 'internal', reference: expect.stringMatching(/^[\dA-F]{8}$/) },
    })
    expect(logged).toHaveLength(1)
    expect(logged[0]).toContain('secret detail')
    expect(logged[0]).toContain('dispatch.test')
    const reference = reply.ok || reply.problem.code !== 'internal' ? '' : reply.problem.reference
    expect(logged[0]?.startsWith(reference)).toBe(true)
  })

  it('that makes an answer the contract does not know is held back', async () => {
    const { call, logged } = withDescribe(() => ok({ kind: 'desktop', password: 'x' }))
    expect(await call('host.describe', {})).toMatchObject({ ok: false, problem: { code: 'internal' } })
    expect(logged[0]).not.toContain('dispatch.test')
  })
})
