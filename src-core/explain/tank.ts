import { rinseVolume } from '../dose/rinse-volume'
import { productDensity } from '../drawdown/product-density'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Machine, Product, Pump } from '../records'
import { waterThatLeaves } from '../dose/wash-water'
import { tankOfPump, type TestedPump } from '../tank/tank-of-pump'
import type { TankResult } from '../tank/tank-result'
import { volumeOf } from '../tank/model'
import type { DecimalSign } from '../units/parse'
import type { Working } from './types'
import { line, put } from './working'

/** The working of everything a screen shows about the wash a pump feeds. */
export interface TankWorkings {
  readonly settlesAt: Outcome<Working>
  readonly recharge: Outcome<Working>
  readonly initialCharge: Outcome<Working>
  readonly racksBeforeTest: Outcome<Working>
}

export interface TankExplained {
  readonly machine: Machine
  readonly pump: Pump
  readonly product: Product | null
  readonly tested: TestedPump | null
}

const BALANCE = 'Mass balance of a stirred tank of constant volume (derived).'
const SETTLED = 'The tank is well mixed and has settled; soil uses nothing up.'

/** Problems: those of the result explained; `not-predicted` for a pump that feeds the final rinse. */
export function explainTank(input: TankExplained, sign: DecimalSign = 'point'): TankWorkings {
  const result = tankOfPump(input)
  if (result === null) {
    const none = fail({ code: 'cannot-compute', reason: 'not-predicted' })
    return { settlesAt: none, recharge: none, initialCharge: none, racksBeforeTest: none }
  }
  return {
    settlesAt: settlesAt(result, input, sign),
    recharge: recharge(result, input, sign),
    initialCharge: initialCharge(result, input, sign),
    racksBeforeTest: racksBeforeTest(result, sign),
  }
}

const water = ({ machine }: TankExplained) => waterThatLeaves(machine, rinseVolume(machine.rinse))

function carriedOut({ machine }: TankExplained): readonly string[] {
  if (machine.wash.kind !== 'tank') return ['What is filled each cycle is what leaves the sump.']
  return machine.wash.carriedOut === null
    ? ['Water carried out on ware and as vapour is not recorded and counts as nothing.']
    : ['Water carried out on ware and as vapour leaves without product.']
}

function settlesAt(result: TankResult, input: TankExplained, sign: DecimalSign): Outcome<Working> {
  const dose = input.tested?.dose ?? fail({ code: 'no-runs' })
  return chain(
    all([result.settlesAt, dose, productDensity(input.product), water(input)]),
    ([strength, D, rho, r]) =>
      ok({
        title: 'Strength the wash settles at',
        formula: 'c = ρ × D / r',
        inputs: [
          line('ρ', 'Density of the product', rho.value, 'g/mL'),
          line('D', 'Dose per rack', D.value, 'mL/rack'),
          line('r', 'Water that leaves per rack', r.value, 'L'),
        ],
        substituted: `c = ${put(rho.value, sign)} × ${put(D.value, sign)} / ${put(r.value, sign)}`,
        result: line('c', 'Long-run mean strength', strength.value, 'g/L product'),
        source: BALANCE,
        assumptions: [SETTLED, ...carriedOut(input)],
      }),
  )
}

function recharge(result: TankResult, input: TankExplained, sign: DecimalSign): Outcome<Working> {
  const flow = input.tested?.flow ?? fail({ code: 'no-runs' })
  return chain(
    all([result.recharge, result.window, productDensity(input.product), water(input), flow]),
    ([seconds, window, rho, r, q]) =>
      ok({
        title: 'Seconds per rack that hold the target',
        formula: 't = 60 × c* × r / (ρ × q)',
        inputs: [
          line('c*', 'Target', window.target, 'g/L product'),
          line('r', 'Water that leaves per rack', r.value, 'L'),
          line('ρ', 'Density of the product', rho.value, 'g/mL'),
          line('q', 'Flow of the pump', q.value, 'mL/min'),
        ],
        substituted: `t = 60 × ${put(window.target, sign)} × ${put(r.value, sign)} / (${put(rho.value, sign)} × ${put(q.value, sign)})`,
        result: line('t', 'Pump seconds per rack', seconds.value, 's'),
        source: BALANCE,
        assumptions: [SETTLED, ...carriedOut(input)],
      }),
  )
}

function initialCharge(result: TankResult, input: TankExplained, sign: DecimalSign): Outcome<Working> {
  const flow = input.tested?.flow ?? fail({ code: 'no-runs' })
  return chain(
    all([result.initialCharge, result.window, productDensity(input.product), result.model, flow]),
    ([seconds, window, rho, model, q]) =>
      ok({
        title: 'Seconds after a fresh fill',
        formula: 't = 60 × c* × V / (ρ × q)',
        inputs: [
          line('c*', 'Target', window.target, 'g/L product'),
          line('V', 'Volume of the tank', volumeOf(model), 'L'),
          line('ρ', 'Density of the product', rho.value, 'g/mL'),
          line('q', 'Flow of the pump', q.value, 'mL/min'),
        ],
        substituted: `t = 60 × ${put(window.target, sign)} × ${put(volumeOf(model), sign)} / (${put(rho.value, sign)} × ${put(q.value, sign)})`,
        result: line('t', 'Pump seconds after a fill', seconds.value, 's'),
        source: BALANCE,
        assumptions: ['The tank was drained whole and holds clean water.'],
      }),
  )
}

function racksBeforeTest(result: TankResult, sign: DecimalSign): Outcome<Working> {
  return chain(all([result.timeConstant, result.racksBeforeTest]), ([constant, racks]) =>
    ok({
      title: 'Racks to wash before the tank is tested',
      formula: 'n = 3 × N, rounded up',
      inputs: [line('N', 'Racks in which a difference falls to 1/e', constant, 'racks')],
      substituted: `n = 3 × ${put(constant, sign)}`,
      result: line('n', 'Racks before a test', racks, 'racks'),
      source: 'A stirred tank has taken up 95 % of a change after three time constants (derived).',
      assumptions: ['Counted from the last fill, or the last change of the setting.'],
    }),
  )
}
