import type { Call, Method } from '#core/contract/contract'
import type { Outcome } from '#core/outcome'

/** What carries a call to whichever host answers. Types are put on in `asCall`; the wire itself knows only names. */
export type Transport = (method: Method, input: unknown) => Promise<Outcome<unknown>>

/** One typed function over any transport. The host has parsed every reply with the schemas the types come from. */
export const asCall = (transport: Transport): Call => transport as Call
