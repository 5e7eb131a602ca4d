import type { Machine, Product, Pump, Reading, Verification } from '../records'
import { verificationsOfPump } from '../verify/verifications-of-pump'
import type { Setup } from './setup-of'
import type { TestResult, VerificationResult } from './types'

export interface VerificationSurroundings {
  readonly machine: Machine
  readonly pump: Pump
  readonly product: Product | null
  readonly setup: Setup
  readonly asLeft: TestResult | null
  readonly readings: readonly Reading[]
}

/** Chemical checks of one pump's strength against what its last flow test predicts. */
export const verificationResults = (
  verifications: readonly Verification[],
  { machine, pump, product, setup, asLeft, readings }: VerificationSurroundings,
): readonly VerificationResult[] =>
  verificationsOfPump(verifications, {
    machine,
    pump,
    product,
    instruments: setup.instruments,
    water: setup.water,
    tested: asLeft,
    readings,
  })
