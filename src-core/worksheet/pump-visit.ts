import { dayFitted } from '../drift/tube-fitted-on'
import { doseSeconds } from '../dose/dose-seconds'
import { doseContext, type DoseContext } from '../dose/on-basis'
import { requiredFlow } from '../dose/required-flow'
import { once } from '../once'
import type { Outcome } from '../outcome'
import type { Problem } from '../problem'
import type { Machine, Pump, PumpWork, Settings, Site, Step, Visit } from '../records'
import { positions } from '../screw/positions'
import type { Estimate } from '../statistics/estimate'
import { boosterOfPump } from '../tank/booster-of-pump'
import { tankOfPump } from '../tank/tank-of-pump'
import type { TurnAdvice } from '../screw/types'
import { judgedState } from './judged-state'
import type { PumpPast } from './pump-past'
import type { Setup } from './setup-of'
import { testsAround } from './tests-around'
import { testResult } from './test-result'
import { turnAdvice, type AdviceInput } from './turn-advice'
import type { PumpVisit, TestResult } from './types'
import { verificationResults } from './verification-results'

export interface PumpVisitInput {
  readonly site: Site
  readonly visit: Visit
  readonly setup: Setup
  readonly settings: Settings | null
  readonly machine: Machine
  readonly pump: Pump
  /** earlier closed visits; not needed for a closed visit */
  readonly pasts: () => readonly PumpPast[]
}

/** The tube a test was made with: a new one, where one was fitted before it at this visit. */
function tubeAt(test: Step, { tube }: Pump, steps: readonly Step[]): Pump['tube'] {
  const fittedOn = dayFitted(steps.slice(0, steps.indexOf(test)))
  return fittedOn === null || (tube.fittedOn !== null && tube.fittedOn > fittedOn)
    ? tube
    : { ...tube, fittedOn }
}

/**
 * One pump in one visit: every test, where it stands, what is missing, and what to do next. What follows from the tests
 * is worked out when it is first read.
 */
export function pumpVisit(input: PumpVisitInput): PumpVisit {
  const { visit, setup, machine, pump } = input
  const work: PumpWork | null = visit.work.find((one) => one.pumpId === pump.id) ?? null
  const product = setup.products.find((one) => one.id === pump.productId) ?? null
  const open = visit.closing === null
  const where = positions(work?.steps ?? [], pump.screwStops)
  const around = { machine, pump, product, instruments: setup.instruments, open }
  const made = (work?.steps ?? []).filter((step) => step.kind === 'test')
  const tests = made.map((test) =>
    testResult(test, where.byTest.get(test.id) ?? 0, {
      ...around,
      tube: tubeAt(test, pump, work?.steps ?? []),
    }),
  )
  const counted = tests.filter((_, i) => made[i]?.runs.length !== 0)
  const context = doseContext(machine, product, pump)
  const asLeft = counted.at(-1) ?? null
  const missing = once(() => missingFor(pump, context, asLeft))
  const advice = open
    ? adviceLater({ ...input, work, tests: counted, positions: where, context })
    : () => null
  const verifications = once(() =>
    verificationResults(work?.verifications ?? [], {
      machine,
      product,
      setup,
      steps: work?.steps ?? [],
      tests: counted,
      pump,
      readings: visit.readings,
    }),
  )
  const booster = once(() => boosterLag(machine, pump, work?.steps ?? [], counted))
  const tank = once(() => tankOfPump({ machine, pump, product, tested: asLeft }))
  return {
    pumpId: pump.id,
    pumpName: pump.name,
    role: pump.role,
    productId: pump.productId,
    productName: product?.name ?? null,
    tests,
    asFound: counted[0] ?? null,
    asLeft,
    get state() {
      return judgedState(asLeft)
    },
    get missing() {
      return missing()
    },
    get advice() {
      return advice()
    },
    get verifications() {
      return verifications()
    },
    get tank() {
      return tank()
    },
    get booster() {
      return booster()
    },
  }
}

function boosterLag(machine: Machine, pump: Pump, steps: readonly Step[], tests: readonly TestResult[]) {
  const { inForce, before } = testsAround(steps, tests, null)
  const now = inForce === null ? null : inRinse(inForce)
  const then = before === null ? null : inRinse(before)
  return boosterOfPump(machine, pump, now === null || then === null ? null : { before: then, after: now })
}

/** Product in the rinse by volume, which every product has. */
const inRinse = ({ strengths }: TestResult): Outcome<Estimate<'ppm-vv'>> | null =>
  strengths.find((one): one is Outcome<Estimate<'ppm-vv'>> => one.ok && one.value.unit === 'ppm-vv') ?? null

/** Apart, so that a closed visit, which is kept, does not keep the whole site as it was. */
const adviceLater = (input: AdviceInput): (() => TurnAdvice) => once(() => turnAdvice(input))

/** What stands between this pump and an answer: set-up first, because a test is worth little without it. */
function missingFor(pump: Pump, context: DoseContext, last: TestResult | null): readonly Problem[] {
  const problems: Problem[] = []
  const note = (problem: Problem): void => {
    if (!problems.some((one) => JSON.stringify(one) === JSON.stringify(problem))) problems.push(problem)
  }
  if (context.product === null) note({ code: 'missing', field: 'pump.productId', needed: 'product' })
  const seconds = doseSeconds(pump)
  if (!seconds.ok) note(seconds.problem)
  const flows = requiredFlow(pump, context)
  if (!flows.ok) note(flows.problem)
  if (last === null) note({ code: 'no-runs' })
  else if (!last.flow.ok) note(last.flow.problem)
  else if (!last.decision.ok) note(last.decision.problem)
  return problems
}
