import type { Call } from '#core/contract/contract'
import { bridgeTransport, type Bridge } from './bridge'
import { httpTransport } from './http'
import { sessionToken } from './start-code'
import { asCall } from './transport'

declare global {
  interface Window {
    readonly dosewright?: Bridge
  }
}

/** The way to the host of this window; null when the page was opened by hand and nobody vouches for it. */
export async function connect(window: Window & typeof globalThis): Promise<Call | null> {
  if (window.dosewright !== undefined) return asCall(bridgeTransport(window.dosewright))
  const token = await sessionToken({
    hash: window.location.hash,
    clear: () => window.history.replaceState(null, '', window.location.pathname),
    store: window.sessionStorage,
    fetcher: window.fetch.bind(window),
  })
  return token === null ? null : asCall(httpTransport(window.fetch.bind(window), token))
}
