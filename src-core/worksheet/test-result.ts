import { dosePerRack } from '../dose/concentration'
import { decide } from '../dose/decide'
import { doseSeconds } from '../dose/dose-seconds'
import { basesOf, doseContext, onBasis } from '../dose/on-basis'
import { readWindow } from '../dose/read-window'
import type { BasisUnit, Decision } from '../dose/types'
import { candidate, type Candidate } from '../drawdown/choose-cylinder'
import { testFlow } from '../drawdown/test-flow'
import type { FlowResult, TestConditions } from '../drawdown/types'
import { once } from '../once'
import { all, chain, ok, type Outcome } from '../outcome'
import type { Instrument, Machine, Product, Pump, Test, WindowBasis } from '../records'
import type { Estimate } from '../statistics/estimate'
import type { TestResult } from './types'

/** Everything around one test. `open` false: the visit is closed, nothing is to be settled any more. */
export interface TestSurroundings {
  readonly machine: Machine
  readonly pump: Pump
  /** the tube the test was made with */
  readonly tube: Pump['tube']
  readonly product: Product | null
  readonly instruments: readonly Instrument[]
  readonly open: boolean
}

/**
 * One test worked out from its readings to the decision on the window's own basis. Each part is worked out when it is
 * first read: of most tests of a history nobody asks for more than the flow.
 */
export function testResult(test: Test, eighths: number, around: TestSurroundings): TestResult {
  const conditions: TestConditions = {
    instrument: around.instruments.find((one) => one.id === test.instrumentId) ?? null,
    product: around.product,
    tube: around.tube,
    rollers: around.pump.rollers,
  }
  const worked = once(() => testFlow(test, conditions))
  const doses = once(() => dosesOf(worked(), around))
  const decision = once(() => decisionOf(test, conditions, worked(), doses(), around))
  return {
    testId: test.id,
    at: test.at,
    method: test.method,
    eighths,
    get runs() {
      return worked().runs
    },
    get quality() {
      return worked().quality
    },
    get flow() {
      return worked().flow
    },
    get dose() {
      return doses().dose
    },
    get strengths() {
      return doses().strengths()
    },
    get decision() {
      return decision()
    },
  }
}

interface Doses {
  readonly dose: Outcome<Estimate<'mL/rack'>>
  readonly on: (basis: WindowBasis) => Outcome<Estimate<BasisUnit>>
  readonly strengths: () => readonly Outcome<Estimate<BasisUnit>>[]
}

/** The dose, and each concentration once, whether it is listed, decided on, or both. */
function dosesOf({ flow }: FlowResult, { machine, pump, product }: TestSurroundings): Doses {
  const context = doseContext(machine, product, pump)
  const dose = chain(all([flow, doseSeconds(pump)]), ([q, seconds]) => dosePerRack(q, seconds))
  const known = new Map<WindowBasis, Outcome<Estimate<BasisUnit>>>()
  const on = (basis: WindowBasis): Outcome<Estimate<BasisUnit>> => {
    const before = known.get(basis)
    if (before !== undefined) return before
    const value = chain(dose, (given) => onBasis(basis, given, context))
    known.set(basis, value)
    return value
  }
  return { dose, on, strengths: once(() => (dose.ok ? basesOf(pump, context).map(on) : [])) }
}

function decisionOf(
  test: Test,
  conditions: TestConditions,
  worked: FlowResult,
  { dose, on }: Doses,
  { machine, pump, product, instruments, open }: TestSurroundings,
): Outcome<Decision> {
  const window = chain(dose, () => readWindow(pump.window, doseContext(machine, product, pump)))
  return chain(window, (edges) =>
    chain(on(edges.basis), (value) => {
      const state = open ? worked.state : null
      const settling = state === null ? null : { state, tools: tools(test, conditions, instruments) }
      return ok(decide(value, edges, settling))
    }),
  )
}

/** What the test could be repeated with: instruments of the kind it was made with, whose data suffice. */
const tools = (
  test: Test,
  conditions: TestConditions,
  instruments: readonly Instrument[],
): readonly Candidate[] =>
  instruments
    .filter((one) =>
      test.method === 'weighed' ? one.kind === 'scale' : one.kind === 'cylinder' || one.kind === 'cup',
    )
    .flatMap((one) => {
      const found = candidate(test, conditions, one)
      return found.ok ? [found.value] : []
    })
