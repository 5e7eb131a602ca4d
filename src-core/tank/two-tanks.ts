import { all, chain, fail, ok, type Outcome } from '../outcome'
import { tankWindow, type TankWindow } from '../dose/tank-window'
import type { Machine, Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { exactly } from '../statistics/make-estimate'
import { quotient } from '../statistics/propagate'
import { cascadeRacksBeforeTest, type TwoTanks } from './cascade'
import type { PairService } from './cascade-service'
import { racksBeforeTest, timeConstant } from './decay'
import { modelOf } from './read-model'
import type { StrengthSeries } from './service-summary'
import type { TankModel } from './types'

/** The other tank of a machine with two, as far as the product of one pump is concerned. */
export interface OtherTank {
  readonly which: 'wash-tank' | 'upstream-tank'
  readonly volume: Outcome<number>
  /** the pump that feeds it with the same product; null: only what comes over the weir, or nothing */
  readonly fedBy: { readonly pumpId: string; readonly name: string } | null
  /** what it should hold, g/L; null: nothing of this product has to be in it */
  readonly window: Outcome<TankWindow> | null
  readonly settlesAt: Outcome<number>
  readonly service: Outcome<StrengthSeries>
  /** product by hand into a fresh fill of it, where no pump of its own does that, mL */
  readonly chargeByHand: Outcome<Estimate<'mL'>> | null
  /** racks before this tank is tested, once anything has changed */
  readonly racksBeforeTest: Outcome<number>
  readonly grams: PairService['grams'] | null
}

/** The two tanks of a machine as one of its pumps meets them. */
export interface Pair {
  readonly tanks: Outcome<TwoTanks>
  readonly own: keyof TwoTanks
  readonly other: keyof TwoTanks
  readonly neighbour: Pump | null
  readonly otherWindow: Outcome<TankWindow> | null
}

/** Null for a machine with a single tank. `density` in g/mL, `rinse` the fresh water per rack. */
export function pairOf(
  machine: Machine,
  pump: Pump,
  rinse: Outcome<Estimate<'L'>>,
  density: Outcome<number>,
): Pair | null {
  if (machine.wash.kind !== 'tank' || machine.wash.upstream === null) return null
  const own = pump.feeds === 'upstream-tank' ? 'second' : 'first'
  const elsewhere = own === 'second' ? 'wash-tank' : 'upstream-tank'
  const neighbour =
    pump.productId === null
      ? null
      : (machine.pumps.find((one) => one.feeds === elsewhere && one.productId === pump.productId) ?? null)
  const tank = (which: OtherTank['which']): Outcome<TankModel> =>
    chain(modelOf(machine, rinse, which), (model) =>
      model.kind === 'tank' ? ok(model) : fail({ code: 'cannot-compute', reason: 'outside-valid-range' }),
    )
  return {
    tanks: chain(all([tank('wash-tank'), tank('upstream-tank')]), ([first, second]) => ok({ first, second })),
    own,
    other: own === 'second' ? 'first' : 'second',
    neighbour,
    otherWindow:
      neighbour !== null
        ? tankWindow(neighbour, density)
        : own === 'second'
          ? tankWindow(pump, density)
          : null,
  }
}

/** Everything about the other tank that does not hang on the service. */
export function otherTank(
  pair: Pair,
  density: Outcome<Estimate<'g/mL'>>,
  service: Outcome<PairService>,
): OtherTank {
  const { tanks, other, neighbour, otherWindow } = pair
  const first = other === 'first'
  return {
    which: first ? 'wash-tank' : 'upstream-tank',
    volume: chain(tanks, (both) => ok(both[other].volume)),
    fedBy: neighbour === null ? null : { pumpId: neighbour.id, name: neighbour.name },
    window: otherWindow,
    settlesAt: chain(service, (both) => ok(both[other].settlesAt)),
    service: chain(service, (both) => ok(both[other])),
    chargeByHand:
      first && neighbour === null && otherWindow !== null
        ? chain(all([otherWindow, tanks, density]), ([window, both, rho]) =>
            chain(exactly(both.first.volume, 'L'), (volume) =>
              quotient(volume, rho, 'mL', { times: window.target }),
            ),
          )
        : null,
    racksBeforeTest: chain(tanks, (both) =>
      ok(first ? cascadeRacksBeforeTest(both) : racksBeforeTest(both.second)),
    ),
    grams: service.ok ? service.value.grams : null,
  }
}

/**
 * Time constants that have to pass before the tank a pump feeds can be tested, racks: the second tank is settled by
 * itself, the first one only after both where anything of the product comes over.
 */
export const pairTimeConstants = (pair: Pair): Outcome<readonly number[]> =>
  chain(pair.tanks, ({ first, second }) =>
    ok(
      pair.own === 'second'
        ? [timeConstant(second)]
        : pair.neighbour === null
          ? [timeConstant(first)]
          : [timeConstant(first), timeConstant(second)],
    ),
  )

/** Racks before the tank a pump feeds is tested: three times the sum of those. */
export const pairRacksBeforeTest = (pair: Pair): Outcome<number> =>
  chain(pair.tanks, (both) =>
    ok(
      pair.own === 'first' && pair.neighbour !== null
        ? cascadeRacksBeforeTest(both)
        : racksBeforeTest(both[pair.own]),
    ),
  )
