import type { SeriesQuality } from '../drawdown/types'
import type { CheckAnswer, Id, Pump, SiteCheck } from '../records'
import type { TurnRefusal } from './types'

/** What must be in order before a screw is touched. */
export interface GateQuestion {
  readonly setBy: Pump['setBy']
  /** a probe holds the strength: no turn of a screw changes it */
  readonly heldByProbe?: boolean
  readonly hasWindow: boolean
  /** the flow the window asks for can be worked out: product, strength, rinse water and dose seconds are there */
  readonly inputsComplete: boolean
  /** the last test; null when there is none */
  readonly quality: SeriesQuality | null
  readonly conditions: 'ok' | 'not-answered' | 'not-ok'
  readonly cautionsAcknowledged: boolean
}

/** Every reason to refuse a turn, the first to mend first; empty when the way is clear. */
export function turnGate(question: GateQuestion): readonly TurnRefusal[] {
  if (question.heldByProbe === true) return ['held-by-probe']
  const reasons: readonly (TurnRefusal | null)[] = [
    question.setBy === 'screw' ? null : 'not-set-by-screw',
    question.cautionsAcknowledged ? null : 'caution-not-acknowledged',
    question.conditions === 'not-answered' ? 'conditions-not-answered' : null,
    question.conditions === 'not-ok' ? 'condition-not-ok' : null,
    question.hasWindow ? null : 'no-window',
    question.hasWindow && !question.inputsComplete ? 'inputs-missing' : null,
    ...(question.quality === null ? (['not-tested'] as const) : seriesReasons(question.quality)),
  ]
  return reasons.filter((reason) => reason !== null)
}

function seriesReasons({ findings }: SeriesQuality): readonly TurnRefusal[] {
  const reasons = findings.flatMap((finding): readonly TurnRefusal[] => {
    if (finding.severity !== 'stops') return []
    switch (finding.code) {
      case 'not-primed':
        return ['not-primed']
      case 'too-few-runs':
        return ['too-few-runs']
      case 'rising':
      case 'falling':
      case 'trend':
        return ['series-trends']
      case 'outlier':
        return ['series-has-outlier']
      case 'scatter':
      case 'two-levels':
      case 'few-graduations':
      case 'few-pulses':
        return ['series-scatters']
      // A pump that gives nothing is told what to look for, and an old tube is a warning of its own.
      case 'no-flow':
      case 'tube-overdue':
        return []
    }
  })
  return [...new Set(reasons)]
}

/**
 * The site conditions of a machine taken together: `blocking` are those whose "not ok" refuses a turn. "Not checked" is
 * an answer; no answer is none.
 */
export function conditionsOf(
  answers: readonly CheckAnswer[],
  machineId: Id,
  blocking: readonly SiteCheck[],
): GateQuestion['conditions'] {
  const given = new Map(
    answers.filter((a) => a.machineId === machineId).map((a) => [a.check, a.answer] as const),
  )
  if (blocking.some((check) => given.get(check) === 'not-ok')) return 'not-ok'
  return blocking.every((check) => given.has(check)) ? 'ok' : 'not-answered'
}
