import type { Machine, Product, Pump, Verification } from '../records'
import type { Setup } from './setup-of'
import type { TestResult, VerificationResult } from './types'

export interface VerificationSurroundings {
  readonly machine: Machine
  readonly pump: Pump
  readonly product: Product | null
  readonly setup: Setup
  readonly asLeft: TestResult | null
}

/** Chemical checks of one pump's strength against what its last flow test predicts. */
export const verificationResults = (
  _verifications: readonly Verification[],
  _around: VerificationSurroundings,
): readonly VerificationResult[] => []
