import { blockingChecks } from '../cautions/site-checks'
import { cautionsFor } from '../cautions/cautions-for'
import { missingAcknowledgements } from '../cautions/missing-acknowledgements'
import { heldByProbe } from '../dose/held-by-probe'
import type { DoseContext } from '../dose/on-basis'
import { requiredFlow, type RequiredFlow } from '../dose/required-flow'
import type { Machine, Pump, PumpWork, Settings, Site, Visit } from '../records'
import { adviseTurn } from '../screw/advise-turn'
import { gainPrior } from '../screw/gain-prior'
import { observationOf } from '../screw/observation-of'
import type { Positions } from '../screw/positions'
import { conditionsOf, turnGate } from '../screw/turn-gate'
import type { ScrewObservation, TurnAdvice } from '../screw/types'
import { countedRuns } from './counted-runs'
import { playTakenUp } from './play-taken-up'
import { sameKindPasts, type PumpPast } from './pump-past'
import type { Setup } from './setup-of'
import type { TestResult } from './types'

/** Everything the advice for one pump of an open visit is made from. */
export interface AdviceInput {
  readonly site: Site
  readonly visit: Visit
  readonly setup: Setup
  readonly settings: Pick<Settings, 'cautionTexts'> | null
  readonly machine: Machine
  readonly pump: Pump
  readonly work: PumpWork | null
  readonly tests: readonly TestResult[]
  readonly positions: Positions
  readonly context: DoseContext
  /** asked for only when a turn is to be advised: it needs every flow of the history */
  readonly pasts: () => readonly PumpPast[]
}

/** The next turn for a pump of an open visit, or every reason why none is advised yet. */
export function turnAdvice(input: AdviceInput): TurnAdvice {
  const { pump, visit, tests } = input
  const last = tests.at(-1) ?? null
  const flows = requiredFlow(pump, input.context)
  const reasons = turnGate({
    setBy: pump.setBy,
    heldByProbe: heldByProbe(pump),
    hasWindow: pump.window !== null,
    inputsComplete: flows.ok && (last === null || last.flow.ok),
    quality: last?.quality ?? null,
    conditions: conditionsOf(visit.checks, input.machine.id, blockingChecks(input.machine)),
    cautionsAcknowledged: openCautions(input) === 0,
  })
  if (reasons.length > 0 || last === null || !flows.ok)
    return { kind: 'refuse', reasons: reasons.length > 0 ? reasons : ['inputs-missing'] }
  const pasts = input.pasts()
  const own = pasts.find((past) => past.pumpId === pump.id) ?? null
  const advice = adviseTurn({
    ...narrowed(flows.value, last),
    observations: observationsOnTube(tests, input.positions),
    prior: gainPrior(own?.segments ?? [], sameKindPasts(pump, input.setup.machines, pasts)),
    stops: input.positions.stops,
    playTakenUp: playTakenUp(input.work?.steps ?? [], testsOnTube(tests, input.positions)[0] ?? null, own),
    careful: pump.role === 'sanitizer',
    leftUntouched: leftUntouched(input, own),
  })
  const proved = last.decision.ok && last.decision.value.verdict === 'proved-in'
  return advice.kind === 'leave' && advice.reason === 'proved-in' && !proved
    ? { kind: 'leave', reason: 'not-worth-a-move' }
    : advice
}

function openCautions({ site, visit, setup, settings, pump }: AdviceInput): number {
  const cautions = cautionsFor({
    site: { machines: setup.machines, stock: site.stock },
    products: setup.products,
    trigger: 'before-first-test',
    productId: pump.productId,
    texts: settings?.cautionTexts ?? [],
  })
  return missingAcknowledgements(visit, cautions).length
}

/** The part of the room on each side that the narrowing may take. Judgement: some of the window must be left to aim at. */
const MOST_NARROWING = 0.5

/**
 * The flows of the window, drawn in by what the flow test cannot see: the doubt of seconds, rinse water, density and
 * strength. Without it the learner would call proved what the decision on the window's own basis does not.
 */
function narrowed(flows: RequiredFlow, last: TestResult): RequiredFlow {
  if (!last.flow.ok || !last.decision.ok || !(last.decision.value.value.value > 0)) return flows
  const flow = last.flow.value
  const whole = (flow.value * last.decision.value.value.expanded) / last.decision.value.value.value
  const rest = Math.max(0, whole - flow.expanded)
  return {
    low: flows.low + Math.min(rest, MOST_NARROWING * (flows.target - flows.low)),
    target: flows.target,
    high: flows.high - Math.min(rest, MOST_NARROWING * (flows.high - flows.target)),
  }
}

/** The tests since the present tube was fitted: an older tube has nothing to say about the level. */
function observationsOnTube(tests: readonly TestResult[], positions: Positions): readonly ScrewObservation[] {
  return testsOnTube(tests, positions).flatMap((test) =>
    test.flow.ok ? [observationOf(test.eighths, test.flow.value, countedRuns(test))] : [],
  )
}

function testsOnTube(tests: readonly TestResult[], positions: Positions): readonly TestResult[] {
  const onTube = new Set(positions.tubes.at(-1))
  return tests.filter((test) => onTube.has(test.testId) && test.flow.ok)
}

/** What the last visit left, while tube and line have not been looked at in this one. */
function leftUntouched(
  { work, visit, machine }: AdviceInput,
  own: PumpPast | null,
): { readonly flow: number; readonly expanded: number } | null {
  const fitted = work?.steps.some((step) => step.kind === 'tube-fitted') ?? false
  const lookedAt = visit.checks.some(
    (answer) =>
      answer.machineId === machine.id && answer.check === 'tubes-as-installed' && answer.answer === 'ok',
  )
  return fitted || lookedAt || own === null ? null : own.left
}
