import type { Id } from '#core/records/index'
import type { PumpVisit } from '#core/worksheet/types'

/** What the order of work is made from, per pump. */
export interface PumpAtWork {
  readonly pump: Pick<PumpVisit, 'pumpId' | 'pumpName' | 'state' | 'advice'>
  readonly primed: boolean
  readonly priming: boolean
  /** the pump was changed since it was last timed: what was found then is the past */
  readonly changed: boolean
  /** its strength was checked with a kit in this visit */
  readonly checked?: boolean
}

export interface NextStep {
  readonly text: string
  /** where the bench should stand for it */
  readonly place: 'conditions' | 'close' | Id
}

/**
 * The fastest thing to do next, judged as a rep would: conditions first; one pump primes while another is timed; turn
 * before testing elsewhere, for a turn needs its half minute to settle; settle what is open; then close.
 */
export function nextStep(conditionsOpen: number, pumps: readonly PumpAtWork[], timing: Id | null): NextStep {
  if (conditionsOpen > 0)
    return {
      text: `Answer ${conditionsOpen === 1 ? 'the last condition that bears' : `${conditionsOpen} conditions that bear`} on the dose.`,
      place: 'conditions',
    }
  const free = pumps.filter(
    ({ pump, priming }) => !priming && pump.pumpId !== timing && !heldByProbe(pump.advice),
  )
  const toPrime = free.find(
    ({ pump, primed, changed }) => !primed && (changed || pump.state === 'not-tested'),
  )
  const toTime = free.find((one) => one.primed && one !== toPrime && wantsRuns(one))
  if (toPrime !== undefined && toTime !== undefined)
    return {
      text: `Start priming ${toPrime.pump.pumpName}, and time ${toTime.pump.pumpName} meanwhile.`,
      place: toPrime.pump.pumpId,
    }
  const toTurn = free.find(({ pump, changed }) => !changed && asksForATurn(pump.advice))
  if (toTurn !== undefined)
    return { text: `Turn the screw of ${toTurn.pump.pumpName}.`, place: toTurn.pump.pumpId }
  if (toTime !== undefined)
    return {
      text: toTime.changed ? `Time ${toTime.pump.pumpName} afresh.` : `Time ${toTime.pump.pumpName}.`,
      place: toTime.pump.pumpId,
    }
  if (toPrime !== undefined) return { text: `Prime ${toPrime.pump.pumpName}.`, place: toPrime.pump.pumpId }
  if (timing !== null) {
    const name = pumps.find(({ pump }) => pump.pumpId === timing)?.pump.pumpName ?? 'the pump'
    return { text: `${name} is being timed.`, place: timing }
  }
  const faulty = pumps.find(({ pump, changed }) => !changed && pump.advice?.kind === 'diagnose')
  if (faulty !== undefined)
    return {
      text: `${faulty.pump.pumpName}: it is not the screw. Look there, or close and hand it on.`,
      place: faulty.pump.pumpId,
    }
  const probed = pumps.find(({ pump, checked }) => heldByProbe(pump.advice) && checked !== true)
  if (probed !== undefined)
    return {
      text: `${probed.pump.pumpName}: check the strength of the wash; a probe holds it.`,
      place: probed.pump.pumpId,
    }
  const open = pumps.find(
    ({ pump }) => pump.state !== 'proved-in' && !heldByProbe(pump.advice) && pump.advice?.kind !== 'leave',
  )
  if (open !== undefined) return { text: `${open.pump.pumpName} is still open.`, place: open.pump.pumpId }
  return { text: 'Everything is done here. Close the visit.', place: 'close' }
}

const asksForATurn = (advice: PumpVisit['advice']): boolean =>
  advice?.kind === 'turn' || (advice?.kind === 'confirm' && advice.eighths !== undefined)

const heldByProbe = (advice: PumpVisit['advice']): boolean =>
  advice?.kind === 'refuse' && advice.reasons.includes('held-by-probe')

/** The screw is left where it is, and no further runs would say more. */
const isSettled = (advice: PumpVisit['advice']): boolean =>
  advice?.kind === 'leave' && advice.moreRuns === undefined

const wantsRuns = ({ pump, changed }: PumpAtWork): boolean =>
  changed ||
  pump.state === 'not-tested' ||
  (pump.advice?.kind === 'refuse' && pump.advice.reasons.includes('too-few-runs')) ||
  (pump.advice?.kind !== 'turn' &&
    !isSettled(pump.advice) &&
    (pump.state === 'in-not-proved' || pump.state === 'out-not-proved'))
