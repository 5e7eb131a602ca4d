const TOKEN_KEY = 'dosewright.token'
const START = /^#start=([\w-]{16,200})$/u

export interface StartPlace {
  readonly hash: string
  /** clears the address bar without a new page and without a trace in the history */
  readonly clear: () => void
  readonly store: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>
  readonly fetcher: typeof fetch
}

/**
 * The session token of this tab, or null when it was not opened by the program. A start code in the address is swapped
 * for it once; after that the token lives in this tab's session storage, so that a reload keeps working.
 */
export async function sessionToken(place: StartPlace): Promise<string | null> {
  const code = START.exec(place.hash)?.[1]
  if (code === undefined) return place.store.getItem(TOKEN_KEY)
  place.clear()
  const token = await swap(place.fetcher, code)
  if (token === null) return place.store.getItem(TOKEN_KEY)
  place.store.setItem(TOKEN_KEY, token)
  return token
}

async function swap(fetcher: typeof fetch, code: string): Promise<string | null> {
  try {
    const reply = await fetcher('/session', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code }),
      credentials: 'omit',
    })
    if (!reply.ok) return null
    const body: unknown = await reply.json()
    return typeof body === 'object' && body !== null && 'token' in body && typeof body.token === 'string'
      ? body.token
      : null
  } catch {
    return null
  }
}
