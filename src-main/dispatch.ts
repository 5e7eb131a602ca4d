import { randomBytes } from 'node:crypto'
import { contract, type Method, type Services } from '#core/contract/contract'
import { firstFault } from '#core/documents/fault'
import { fail, type Outcome } from '#core/outcome'

export type Dispatch = (method: string, input: unknown) => Promise<Outcome<unknown>>

const isMethod = (method: string): method is Method => Object.hasOwn(contract, method)

/**
 * Answers one call, whichever pipe it came through: unknown names and inputs that do not fit are refused, a bug becomes
 * a reference number (the stack goes to the log, never to the caller), and an answer is checked before it leaves.
 */
export const dispatcher =
  (services: Services, log: (line: string) => void): Dispatch =>
  async (method, input) => {
    if (!isMethod(method)) return fail({ code: 'unknown-method', method: method.slice(0, 100) })
    const parsed = contract[method].input.safeParse(input, { reportInput: true })
    if (!parsed.success) return fail({ code: 'bad-request', ...firstFault(parsed.error) })
    try {
      // the input was parsed with the very schema the service's type comes from
      const service = services[method] as (input: unknown) => Promise<Outcome<unknown>>
      const outcome = await service(parsed.data)
      if (!outcome.ok) return outcome
      const checked = contract[method].output.safeParse(outcome.value, { reportInput: true })
      if (checked.success) return { ok: true, value: checked.data }
      const { place, reason } = firstFault(checked.error)
      return internal(log, method, `the answer does not fit the contract: ${place} ${reason}`)
    } catch (error) {
      return internal(log, method, error instanceof Error ? (error.stack ?? error.message) : String(error))
    }
  }

function internal(log: (line: string) => void, method: string, what: string): Outcome<never> {
  const reference = randomBytes(4).toString('hex').toUpperCase()
  log(`${reference} ${method}: ${what}`)
  return fail({ code: 'internal', reference })
}
