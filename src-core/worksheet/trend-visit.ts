import { doseContext } from '../dose/on-basis'
import { doseSeconds } from '../dose/dose-seconds'
import { readWindow } from '../dose/read-window'
import { requiredFlow } from '../dose/required-flow'
import type { BasisUnit, Verdict } from '../dose/types'
import { all, chain, ok } from '../outcome'
import type { Day, Id, Visit } from '../records'
import type { Estimate } from '../statistics/estimate'
import { unfitFor } from './judged-state'
import { pumpIn, type Setup } from './setup-of'
import type { PumpVisit, TestResult } from './types'

/** A window on one scale. */
export interface Band {
  readonly low: number
  readonly target: number
  readonly high: number
}

/** One test as it stands in a trend: what it gave, on each scale that its inputs allow. */
export interface TrendTest {
  readonly testId: Id
  readonly flow: Estimate<'mL/min'> | null
  readonly dose: Estimate<'mL/rack'> | null
  /** on the basis of the window of that day, or the first there is */
  readonly strength: Estimate<BasisUnit> | null
  /** null: no decision, or runs that are no ground for one */
  readonly verdict: Verdict | null
  /** nothing in the series stops a turn, so it may speak of drift */
  readonly trusted: boolean
}

export interface TrendVisit {
  readonly visitId: Id
  readonly day: Day
  readonly closed: boolean
  readonly found: TrendTest
  /** null when nothing was tested after it */
  readonly left: TrendTest | null
  /** the window as it stood at that visit, on each scale */
  readonly window: { readonly flow: Band | null; readonly dose: Band | null; readonly strength: Band | null }
}

/** One visit with what it was worked out from. */
export interface Row {
  readonly visit: Visit
  readonly worked: PumpVisit
  readonly setup: Setup
}

/** Whether nothing in the series stops a turn. */
export const isTrusted = (test: TestResult): boolean =>
  test.flow.ok && test.quality.findings.every((finding) => finding.severity !== 'stops')

/** One pump at one visit; nothing when it was not tested. */
export function trendVisit({ visit, worked, setup }: Row): readonly TrendVisit[] {
  const { asFound, asLeft } = worked
  if (asFound === null) return []
  return [
    {
      visitId: visit.id,
      day: visit.startedAt.slice(0, 10),
      closed: visit.closing !== null,
      found: trendTest(asFound),
      left: asLeft === null || asLeft.testId === asFound.testId ? null : trendTest(asLeft),
      window: bands(worked.pumpId, setup),
    },
  ]
}

function trendTest(test: TestResult): TrendTest {
  const decision = test.decision.ok ? test.decision.value : null
  const strengths = test.strengths.flatMap((strength) => (strength.ok ? [strength.value] : []))
  const onWindow = decision === null || decision.basis === 'mL-per-rack' ? null : decision.value
  return {
    testId: test.testId,
    flow: test.flow.ok ? test.flow.value : null,
    dose: test.dose.ok ? test.dose.value : null,
    strength: onWindow ?? strengths[0] ?? null,
    verdict: unfitFor(test) === null ? (decision?.verdict ?? null) : null,
    trusted: isTrusted(test),
  }
}

function bands(pumpId: Id, setup: Setup): TrendVisit['window'] {
  const place = pumpIn(setup, pumpId)
  if (place === null) return { flow: null, dose: null, strength: null }
  const { pump, machine } = place
  const product = setup.products.find((one) => one.id === pump.productId) ?? null
  const context = doseContext(machine, product, pump)
  const flow = requiredFlow(pump, context)
  const dose = chain(all([flow, doseSeconds(pump)]), ([edges, seconds]) => {
    const perRack = (q: number): number => (q * seconds.value) / 60
    return ok({ low: perRack(edges.low), target: perRack(edges.target), high: perRack(edges.high) })
  })
  const own = readWindow(pump.window, context)
  return {
    flow: flow.ok ? flow.value : null,
    dose: dose.ok ? dose.value : null,
    strength: own.ok && own.value.basis !== 'mL-per-rack' ? own.value : null,
  }
}
