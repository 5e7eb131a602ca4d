import { NOT_THE_SCREW } from '#core/messages/advice-words'
import type { Advice, Product } from '#core/records/index'
import { mustNotServe } from '#core/worksheet/must-not-serve'
import type { PumpState, PumpVisit } from '#core/worksheet/types'

type Proposal = Pick<Advice, 'to' | 'text'>

/**
 * What to hand on of a pump that is not left in its window, to whom; nothing for one that is, or that nobody timed. A
 * sanitizer is held against its label too.
 */
export function pumpAdvice(
  pump: PumpVisit,
  state: PumpState,
  changed: boolean,
  label: Product['labelLimits'],
): readonly Proposal[] {
  const name = pump.pumpName
  if (changed) return [{ to: 'rep', text: `${name} was changed and not timed after it. Time it again.` }]
  const serve: Proposal = {
    to: 'operator',
    text: `Take the machine out of use until a strip confirms the sanitizer (${name}).`,
  }
  if (state === 'proved-in' || state === 'in-not-proved' || state === 'not-tested')
    return mustNotServe(pump, state, label)
      ? [
          serve,
          {
            to: 'rep',
            text: `${name} was left outside what its label allows. Put its window and the pump right.`,
          },
        ]
      : []
  const { advice } = pump
  const found =
    advice?.kind === 'diagnose' || advice?.kind === 'confirm' ? NOT_THE_SCREW[advice.finding] : null
  const what =
    state === 'cannot-tell'
      ? `${name} could not be judged at this visit. Time it again.`
      : `${name} was left outside its window. Put it right.`
  const rep: Proposal = { to: 'rep', text: found === null ? what : `${what} ${found[0]}: ${found[1]}` }
  return pump.role === 'sanitizer' ? [serve, rep] : [rep]
}
