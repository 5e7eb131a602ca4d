import type { Method } from '#core/contract/contract'
import type { Outcome } from '#core/outcome'
import type { Transport } from './transport'

/** What the preload script of the desktop window exposes: one function per method, plain data in and out. */
export type Bridge = { readonly [M in Method]: (input: unknown) => Promise<Outcome<unknown>> }

/** Calls through the desktop window's bridge. A rejected promise means that nobody is there to answer. */
export const bridgeTransport =
  (bridge: Bridge): Transport =>
  async (method, input) => {
    try {
      return await bridge[method](input)
    } catch {
      return { ok: false, problem: { code: 'host-gone' } }
    }
  }
