import { decide } from '../dose/decide'
import { dosePerRack } from '../dose/concentration'
import { doseSeconds } from '../dose/dose-seconds'
import { onBasis, strengthsOf, type DoseContext } from '../dose/on-basis'
import { readWindow } from '../dose/read-window'
import { candidate, type Candidate } from '../drawdown/choose-cylinder'
import { testFlow } from '../drawdown/test-flow'
import type { TestConditions } from '../drawdown/types'
import { all, chain, ok } from '../outcome'
import type { Instrument, Machine, Product, Pump, Test } from '../records'
import type { TestResult } from './types'

/** Everything around one test. `tools` null: the visit is closed, nothing is to be settled any more. */
export interface TestSurroundings {
  readonly machine: Machine
  readonly pump: Pump
  readonly product: Product | null
  readonly instruments: readonly Instrument[]
  readonly open: boolean
}

/** One test worked out from its readings to the decision on the window's own basis. */
export function testResult(test: Test, eighths: number, around: TestSurroundings): TestResult {
  const { machine, pump, product } = around
  const conditions: TestConditions = {
    instrument: around.instruments.find((one) => one.id === test.instrumentId) ?? null,
    product,
    tube: pump.tube,
    rollers: pump.rollers,
  }
  const context: DoseContext = { rinse: machine.rinse, product }
  const worked = testFlow(test, conditions)
  const dose = chain(all([worked.flow, doseSeconds(pump)]), ([flow, seconds]) => dosePerRack(flow, seconds))
  const value = chain(all([dose, readWindow(pump.window, context)]), ([given, window]) =>
    chain(onBasis(window.basis, given, context), (on) => ok({ on, window })),
  )
  return {
    testId: test.id,
    at: test.at,
    method: test.method,
    eighths,
    runs: worked.runs,
    quality: worked.quality,
    flow: worked.flow,
    dose,
    strengths: dose.ok ? strengthsOf(dose.value, pump, context) : [],
    decision: chain(value, ({ on, window }) =>
      ok(
        decide(
          on,
          window,
          worked.state === null || !around.open
            ? null
            : { state: worked.state, tools: tools(test, conditions, around.instruments) },
        ),
      ),
    ),
  }
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
