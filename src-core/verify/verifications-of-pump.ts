import type { BasisUnit } from '../dose/types'
import { fail, type Outcome } from '../outcome'
import type { Instrument, Machine, Product, Pump, Reading, Verification, Water } from '../records'
import type { Estimate } from '../statistics/estimate'
import { tankOfPump, type TestedPump } from '../tank/tank-of-pump'
import { readNumber } from '../units/read'
import { verificationResult, type VerifiedStrength } from './verification-result'

/** A pump with its last test and everything its checks are held against. */
export interface CheckedPump {
  readonly machine: Machine
  readonly pump: Pump
  readonly product: Product | null
  readonly instruments: readonly Instrument[]
  readonly water: Water
  readonly tested: (TestedPump & { readonly strengths: readonly Outcome<Estimate<BasisUnit>>[] }) | null
  /** its strengths before the last change of the visit; null where nothing was changed */
  readonly before: readonly Outcome<Estimate<BasisUnit>>[] | null
  /** the visit's readings; racks since the fill are taken from them */
  readonly readings: readonly Reading[]
}

/** Every chemical check of one pump in one visit against what its last test predicts. */
export function verificationsOfPump(
  checks: readonly Verification[],
  around: CheckedPump,
): readonly VerifiedStrength[] {
  if (checks.length === 0) return []
  const tank = tankOfPump(around)
  return checks.map((check) =>
    verificationResult(check, {
      pump: around.pump,
      product: around.product,
      instruments: around.instruments,
      predictions: {
        strengths: around.tested?.strengths ?? [],
        settlesAt: tank?.settlesAt ?? fail({ code: 'cannot-compute', reason: 'not-predicted' }),
        water: around.water,
      },
      // without a booster there is nothing that could hold water from before
      before: around.machine.boosterVolume === null ? null : around.before,
      racksSinceFill: racksSinceFill(around.readings, around.machine.id),
      racksBeforeTest: tank !== null && tank.racksBeforeTest.ok ? tank.racksBeforeTest.value : null,
    }),
  )
}

/** The last count of racks since the fill on this machine; null when nobody counted. */
function racksSinceFill(readings: readonly Reading[], machineId: string): number | null {
  const counted = readings.filter(
    (reading) => reading.machineId === machineId && reading.kind === 'racks-since-fill',
  )
  const last = counted.toSorted((a, b) => (a.at < b.at ? -1 : 1)).at(-1)
  const count = last === undefined ? null : readNumber(last.count, 'reading.racks-since-fill', { low: 0 })
  return count !== null && count.ok ? count.value : null
}
