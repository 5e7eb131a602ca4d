import type { Decision, SettlingStep } from '../dose/types'
import type { Instrument } from '../records'

/** The decision as a headline: what is, and how sure. */
export const DECISION_HEADLINES: Record<Decision['verdict'], (decision: Decision) => string> = {
  'proved-in': () => 'In window, proved',
  'in-not-proved': () => 'In window, not yet proved',
  'out-not-proved': (decision) => `${side(decision)} the window, not yet proved`,
  'proved-out': (decision) => `${side(decision)} the window`,
}

const side = (decision: Decision): string => (decision.value.value > decision.high ? 'Above' : 'Below')

/** The cheapest thing that would settle an open decision, as a thing to do; null when nothing is open. */
export function settlingWords(
  settle: SettlingStep | null,
  instruments: readonly Pick<Instrument, 'id' | 'name'>[],
): string | null {
  if (settle === null) return null
  switch (settle.kind) {
    case 'more-runs':
      return `${count(settle.runs)} of ${seconds(settle.seconds)} would settle it.`
    case 'longer-runs':
      return `${count(settle.runs)}, ${seconds(settle.seconds)} each, would settle it.`
    case 'better-cylinder': {
      const name = instruments.find((instrument) => instrument.id === settle.instrumentId)?.name
      return `The cylinder is the larger part of the doubt. Take ${name === undefined ? 'a finer one' : `“${name}”`} and time ${seconds(settle.seconds)}.`
    }
    case 'turn-first':
      return 'Turn first; more runs here would not change that.'
    case 'cannot-be-settled':
      return 'No number of runs would settle it: the window is about as narrow as the doubt. Aim for the target.'
    default:
      return unhandled(settle)
  }
}

const count = (runs: number): string => (runs === 1 ? 'One more run' : `${runs} more runs`)
const seconds = (value: number): string => `${Math.ceil(value)} s`

const unhandled = (settle: never): never => {
  throw new Error(`no words for ${JSON.stringify(settle)}`)
}
