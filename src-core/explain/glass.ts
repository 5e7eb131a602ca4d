import { CAUSES } from '../glass/causes'
import { EVIDENCE } from '../glass/evidence'
import type { GlassModel } from '../glass/model'
import type { RankedCause, Reason } from '../glass/rank'
import type { DecimalSign } from '../units/parse'
import type { Working, WorkingLine } from './types'
import { line, put } from './working'

/** The working of one cause's score: where it starts, every observation with its points, and what they add up to. */
export function explainCause(ranked: RankedCause, model: GlassModel, sign: DecimalSign = 'point'): Working {
  const name = CAUSES.find((cause) => cause.id === ranked.cause)?.name ?? ranked.cause
  const total = Object.values(model.prior).reduce((sum, prior) => sum + prior, 0)
  const points = ranked.reasons.map((reason, index) => pointLine(reason, index))
  return {
    title: `${name}: score`,
    formula: 'score = ln p + w1 + w2 + …',
    inputs: [line('p', 'How common the cause is', model.prior[ranked.cause] / total), ...points],
    substituted: `score = ln ${put(model.prior[ranked.cause] / total, sign)}${points
      .map((point) => ` ${point.value < 0 ? '−' : '+'} ${put(Math.abs(point.value), sign)}`)
      .join('')}`,
    result: line('score', 'Score', ranked.score),
    source:
      'Judgement: priors and weights have no source and can be edited. Form: logarithms of odds, added.',
    assumptions: [
      'Observations overlap, so scores are over-confident: read the order and the reasons, not a percentage.',
      'What was not tested or not known adds nothing. A plain no adds what follows from the weight and from how often the sign is seen anywhere.',
      'Below a difference of 1.0 the first two causes are not told apart.',
    ],
  }
}

function pointLine(reason: Reason, index: number): WorkingLine {
  return line(`w${index + 1}`, reasonName(reason), reason.points)
}

function reasonName(reason: Reason): string {
  switch (reason.kind) {
    case 'seen':
      return nameOf(reason.evidence)
    case 'not-seen':
      return `Not so: ${reason.evidence.map(nameOf).join('; ')}`
    case 'had-before':
      return `Confirmed at this machine before (${reason.times})`
    case 'tried-in-vain':
      return 'Its cure was tried and did not help'
  }
}

const nameOf = (evidence: string): string => EVIDENCE.find((item) => item.id === evidence)?.name ?? evidence
