import { rinseVolume } from '../dose/rinse-volume'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Machine } from '../records'
import { boosterOfPump } from '../tank/booster-of-pump'
import { WAIT_CONSTANTS } from '../tank/decay'
import type { DecimalSign } from '../units/parse'
import type { Working } from './types'
import { line, put } from './working'

/** The working of the racks to wash after a change of dose. Problems: booster or rinse volume missing. */
export function explainBooster(
  machine: Pick<Machine, 'boosterVolume' | 'rinse'>,
  sign: DecimalSign = 'point',
): Outcome<Working> {
  const booster = boosterOfPump(machine, { feeds: 'final-rinse' }, null)
  if (booster === null) return fail({ code: 'cannot-compute', reason: 'not-predicted' })
  return chain(
    all([booster.volume, booster.racksBeforeTest, rinseVolume(machine.rinse)]),
    ([volume, racks, rinse]) =>
      ok({
        title: 'Racks to wash after a change of dose',
        formula: 'n = 3 × V / r, rounded up',
        inputs: [
          line('V', 'What the booster holds', volume, 'L'),
          line('r', 'Fresh rinse water per rack', rinse.value, 'L'),
        ],
        substituted: `n = ${WAIT_CONSTANTS} × ${put(volume, sign)} / ${put(rinse.value, sign)}`,
        result: line('n', 'Racks before a test', racks, 'racks'),
        source:
          'A stirred vessel has taken up 95 % of a change after three times its volume has gone through (derived).',
        assumptions: [
          'The booster is well mixed, and the dose enters before it or in it.',
          'A dose that enters after the booster shows at once.',
        ],
      }),
  )
}
