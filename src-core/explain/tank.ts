import { rinseVolume } from '../dose/rinse-volume'
import { productDensity } from '../drawdown/product-density'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Machine, Product, Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { waterThatLeaves } from '../dose/wash-water'
import { tankOfPump, type TestedPump } from '../tank/tank-of-pump'
import type { TankResult } from '../tank/tank-result'
import { volumeOf } from '../tank/model'
import type { DecimalSign } from '../units/parse'
import type { Working, WorkingLine } from './types'
import { line, put } from './working'

/** The working of everything a screen shows about the wash a pump feeds. */
export interface TankWorkings {
  readonly settlesAt: Outcome<Working>
  readonly recharge: Outcome<Working>
  readonly initialCharge: Outcome<Working>
  readonly racksBeforeTest: Outcome<Working>
  /** product by hand into the other tank of two */
  readonly chargeByHand: Outcome<Working>
}

export interface TankExplained {
  readonly machine: Machine
  readonly pump: Pump
  readonly product: Product | null
  readonly tested: TestedPump | null
}

const BALANCE = 'Mass balance of a stirred tank of constant volume (derived).'
const SECOND = 'The second tank stands at its own target, give or take its window.'
const SETTLED = 'The tank is well mixed and has settled; soil uses nothing up.'

/** Problems: those of the result explained; `not-predicted` for a pump that feeds the final rinse. */
export function explainTank(input: TankExplained, sign: DecimalSign = 'point'): TankWorkings {
  const result = tankOfPump(input)
  if (result === null) {
    const none = fail({ code: 'cannot-compute', reason: 'not-predicted' })
    return { settlesAt: none, recharge: none, initialCharge: none, racksBeforeTest: none, chargeByHand: none }
  }
  return {
    settlesAt: settlesAt(result, input, sign),
    recharge: recharge(result, input, sign),
    initialCharge: initialCharge(result, input, sign),
    racksBeforeTest: racksBeforeTest(result, sign),
    chargeByHand: chargeByHand(result, input, sign),
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
    all([result.settlesAt, dose, productDensity(input.product), water(input), result.arriving ?? ok(null)]),
    ([strength, D, rho, r, more]) =>
      ok({
        title: 'Strength the wash settles at',
        formula: more === null ? 'c = ρ × D / r' : 'c = ρ × D / r + c₂',
        inputs: [
          line('ρ', 'Density of the product', rho.value, 'g/mL'),
          line('D', 'Dose per rack', D.value, 'mL/rack'),
          line('r', 'Water that leaves per rack', r.value, 'L'),
          ...secondTank(more),
        ],
        substituted: `c = ${put(rho.value, sign)} × ${put(D.value, sign)} / ${put(r.value, sign)}${more === null ? '' : ` + ${put(more.value, sign)}`}`,
        result: line('c', 'Long-run mean strength', strength.value, 'g/L product'),
        source: BALANCE,
        assumptions: [SETTLED, ...carriedOut(input), ...(more === null ? [] : [SECOND])],
      }),
  )
}

function recharge(result: TankResult, input: TankExplained, sign: DecimalSign): Outcome<Working> {
  const flow = input.tested?.flow ?? fail({ code: 'no-runs' })
  return chain(
    all([
      result.recharge,
      result.window,
      productDensity(input.product),
      water(input),
      flow,
      result.arriving ?? ok(null),
    ]),
    ([seconds, window, rho, r, q, more]) =>
      ok({
        title: 'Seconds per rack that hold the target',
        formula: more === null ? 't = 60 × c* × r / (ρ × q)' : 't = 60 × (c* − c₂) × r / (ρ × q)',
        inputs: [
          line('c*', 'Target', window.target, 'g/L product'),
          ...secondTank(more),
          line('r', 'Water that leaves per rack', r.value, 'L'),
          line('ρ', 'Density of the product', rho.value, 'g/mL'),
          line('q', 'Flow of the pump', q.value, 'mL/min'),
        ],
        substituted: `t = 60 × ${more === null ? put(window.target, sign) : `(${put(window.target, sign)} − ${put(more.value, sign)})`} × ${put(r.value, sign)} / (${put(rho.value, sign)} × ${put(q.value, sign)})`,
        result: line('t', 'Pump seconds per rack', seconds.value, 's'),
        source: BALANCE,
        assumptions: [SETTLED, ...carriedOut(input), ...(more === null ? [] : [SECOND])],
      }),
  )
}

const secondTank = (more: Estimate<'g/L-product'> | null): readonly WorkingLine[] =>
  more === null ? [] : [line('c₂', 'What comes over from the second tank', more.value, 'g/L product')]

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
  return chain(all([result.racksBeforeTest, result.timeConstants]), ([racks, constants]) => {
    const [own = 0, second] = constants
    return ok({
      title: 'Racks to wash before the tank is tested',
      formula: second === undefined ? 'n = 3 × N, rounded up' : 'n = 3 × (N₁ + N₂), rounded up',
      inputs: [
        line(second === undefined ? 'N' : 'N₁', 'Racks in which a difference falls to 1/e', own, 'racks'),
        ...(second === undefined ? [] : [line('N₂', 'The same in the second tank', second, 'racks')]),
      ],
      substituted:
        second === undefined
          ? `n = 3 × ${put(own, sign)}`
          : `n = 3 × (${put(own, sign)} + ${put(second, sign)})`,
      result: line('n', 'Racks before a test', racks, 'racks'),
      source:
        second === undefined
          ? 'A stirred tank has taken up 95 % of a change after three time constants (derived).'
          : 'Two tanks in a row have taken up 95 % of a change after three times the sum of their time constants, at the latest (derived).',
      assumptions: ['Counted from the last fill, or the last change of the setting.'],
    })
  })
}

function chargeByHand({ other }: TankResult, input: TankExplained, sign: DecimalSign): Outcome<Working> {
  const by = other?.chargeByHand ?? null
  if (other === null || by === null || other.window === null)
    return fail({ code: 'cannot-compute', reason: 'no-initial-charge' })
  return chain(
    all([by, other.window, other.volume, productDensity(input.product)]),
    ([charge, window, volume, rho]) =>
      ok({
        title: 'Product by hand into a fresh fill of the other tank',
        formula: 'v = c* × V / ρ',
        inputs: [
          line('c*', 'Target', window.target, 'g/L product'),
          line('V', 'Volume of the tank', volume, 'L'),
          line('ρ', 'Density of the product', rho.value, 'g/mL'),
        ],
        substituted: `v = ${put(window.target, sign)} × ${put(volume, sign)} / ${put(rho.value, sign)}`,
        result: line('v', 'Product by hand', charge.value, 'mL'),
        source: BALANCE,
        assumptions: [
          'The tank was drained whole and holds clean water.',
          'It should hold what the tank above it holds.',
        ],
      }),
  )
}
