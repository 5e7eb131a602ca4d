import type * as Crypto from 'node:crypto'
import { beforeEach, expect, it, vi } from 'vitest'
import { Session } from '#main/local-host/session'

const seen = vi.hoisted(() => ({ compared: 0 }))
vi.mock('node:crypto', async (original) => {
  const real = await original<typeof Crypto>()
  const timingSafeEqual: typeof real.timingSafeEqual = (a, b) => {
    seen.compared += 1
    return real.timingSafeEqual(a, b)
  }
  return { ...real, timingSafeEqual }
})
beforeEach(() => {
  seen.compared = 0
})

const code = (): { readonly session: Session; readonly code: string } => {
  const session = new Session(() => 0)
  return { session, code: session.issueCode() }
}

it('a token or a start code of the right length is compared in constant time, however much of it is right', () => {
  const { session, code: right } = code()
  expect(session.redeem(`${right.slice(1)}A`)).toBeNull()
  expect(seen.compared).toBe(1)
  const token = session.redeem(right) ?? ''
  expect(seen.compared).toBe(2)
  expect(session.admits(token)).toBe(true)
  expect(session.admits(`${token.slice(0, -1)}!`)).toBe(false)
  expect(session.admits('!'.repeat(token.length))).toBe(false)
  expect(seen.compared).toBe(5)
})

it('one start code and one token are never the same, in a thousand starts', () => {
  const all = new Set<string>()
  for (let start = 0; start < 1_000; start += 1) {
    const { session, code: one } = code()
    all.add(one)
    all.add(session.redeem(one) ?? '')
  }
  expect(all.size).toBe(2_000)
})
