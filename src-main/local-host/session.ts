import { randomBytes, timingSafeEqual } from 'node:crypto'

export const TOKEN_HEADER = 'x-dosewright-token'

const CODE_LIVES = 60_000
/** Wrong tokens and codes answered at once; after these each answer waits, and after as many again no data is served. */
const FREE_ATTEMPTS = 20
const DELAY = 500

const secret = (): string => randomBytes(32).toString('base64url')

/** Equal secrets, in a time that does not tell how much of them is equal. */
function equal(a: string, b: string): boolean {
  const left = Buffer.from(a)
  const right = Buffer.from(b)
  return left.length === right.length && timingSafeEqual(left, right)
}

/**
 * Who may call: whoever swapped a start code for the session token. The code travels in the address, which other
 * programs can see in the process list, so it works once and for a minute. Both live in memory only.
 */
export class Session {
  readonly #token = secret()
  readonly #now: () => number
  #code: { readonly text: string; readonly until: number } | null = null
  #bad = 0

  constructor(now: () => number) {
    this.#now = now
  }

  /** A fresh start code; an earlier one that was not used is void. */
  issueCode(): string {
    const text = secret()
    this.#code = { text, until: this.#now() + CODE_LIVES }
    return text
  }

  /** The token for a start code, once; null for any other code. */
  redeem(code: string): string | null {
    const known = this.#code
    if (known === null || !equal(code, known.text) || this.#now() > known.until) {
      this.#bad += 1
      return null
    }
    this.#code = null
    return this.#token
  }

  /** Whether a call carries the token. No token at all is a page opened by hand, not a guess. */
  admits(token: string | null): boolean {
    if (token === null) return false
    if (equal(token, this.#token)) return true
    this.#bad += 1
    return false
  }

  /** Somebody is guessing: no more data until the program is started again. */
  isShut(): boolean {
    return this.#bad >= FREE_ATTEMPTS * 2
  }

  /** How long a refusal must wait, ms. */
  penalty(): number {
    return this.#bad > FREE_ATTEMPTS ? DELAY : 0
  }
}
