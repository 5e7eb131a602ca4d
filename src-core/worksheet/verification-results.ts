import type { Machine, Product, Pump, Reading, Step, Verification } from '../records'
import { verificationsOfPump } from '../verify/verifications-of-pump'
import type { Setup } from './setup-of'
import { testsAround } from './tests-around'
import type { TestResult, VerificationResult } from './types'

export interface VerificationSurroundings {
  readonly machine: Machine
  readonly pump: Pump
  readonly product: Product | null
  readonly setup: Setup
  readonly steps: readonly Step[]
  /** those with runs, in order */
  readonly tests: readonly TestResult[]
  readonly readings: readonly Reading[]
}

/** Chemical checks of one pump's strength, each against what the flow test in force when it was made predicts. */
export const verificationResults = (
  verifications: readonly Verification[],
  { machine, pump, product, setup, steps, tests, readings }: VerificationSurroundings,
): readonly VerificationResult[] =>
  verifications.flatMap((check) => {
    const { inForce, before } = testsAround(steps, tests, check.at)
    return verificationsOfPump([check], {
      machine,
      pump,
      product,
      instruments: setup.instruments,
      water: setup.water,
      tested: inForce,
      before: before?.strengths ?? null,
      readings,
    })
  })
