import { all, chain, ok, type Outcome } from '../outcome'
import type { TankWindow } from '../dose/tank-window'
import type { Estimate } from '../statistics/estimate'
import { inUnit } from '../units/quantity'
import { read, readNumber } from '../units/read'
import type { CascadeState } from './cascade'
import { cascadeOverService, type PairFeed, type PairService } from './cascade-service'
import { volumeOf } from './model'
import { strengthOverService } from './service'
import type { StrengthSeries } from './service-summary'
import type { TankInput } from './tank-result'
import type { Pair } from './two-tanks'
import type { WashModel } from './types'

/** What a pump's service is worked out from, besides its records. */
export interface ServiceParts {
  readonly model: Outcome<WashModel>
  readonly water: Outcome<Estimate<'L'>>
  readonly window: Outcome<TankWindow>
  /** what comes over from the second tank, g/L; 0 where nothing does */
  readonly arriving: Outcome<number>
}

/** The strength over a service day in the one tank of a machine. */
export const serviceOfPump = (input: TankInput, parts: ServiceParts): Outcome<StrengthSeries> =>
  chain(all([parts.model, day(input), feedOf(input, parts)]), ([model, { racks, fills }, feed]) =>
    strengthOverService({
      model,
      racks,
      fills,
      dose: feed.dose,
      charge: feed.charge,
      feedUncertainty: feed.uncertainty,
      window: parts.window.ok ? parts.window.value : null,
    }),
  )

/** The same in both tanks of a cascade. A pump that feeds the other tank is taken to hold its target there. */
export function serviceOfPair(input: TankInput, parts: ServiceParts, pair: Pair): Outcome<PairService> {
  const { own, other, neighbour, otherWindow } = pair
  return chain(
    all([pair.tanks, day(input), feedOf(input, parts), parts.water, held(pair, parts.window)]),
    ([tanks, { racks, fills }, feed, water, target]) => {
      const besides: PairFeed = {
        dose: inOnly(other, target.added * water.value),
        charge: inOnly(other, neighbour === null ? 0 : target.held * tanks[other].volume),
      }
      const limits = {
        [own]: parts.window.ok ? parts.window.value : null,
        [other]: otherWindow?.ok === true ? otherWindow.value : null,
      } as { readonly first: TankWindow | null; readonly second: TankWindow | null }
      return cascadeOverService({
        tanks,
        own: { dose: inOnly(own, feed.dose), charge: inOnly(own, feed.charge) },
        uncertainty: feed.uncertainty,
        besides,
        racks,
        fills,
        windows: limits,
      })
    },
  )
}

const inOnly = (tank: keyof CascadeState, value: number): CascadeState =>
  tank === 'first' ? { first: value, second: 0 } : { first: 0, second: value }

/** What the pump of the other tank holds there, g/L, and what it must add for that. */
function held(
  { own, neighbour, otherWindow }: Pair,
  window: Outcome<TankWindow>,
): Outcome<{ readonly held: number; readonly added: number }> {
  if (neighbour === null || otherWindow === null) return ok({ held: 0, added: 0 })
  return chain(otherWindow, ({ target }) =>
    own === 'first'
      ? ok({ held: target, added: target })
      : chain(window, (here) => ok({ held: target, added: Math.max(0, target - here.target) })),
  )
}

function day({ machine }: TankInput): Outcome<{ readonly racks: number; readonly fills: number }> {
  const racks = readNumber(machine.racksPerDay, 'machine.racksPerDay', { above: 0 })
  const fills =
    machine.wash.kind === 'tank' && machine.wash.drainAndFillsPerDay !== null
      ? readNumber(machine.wash.drainAndFillsPerDay, 'wash.drainAndFillsPerDay', { low: 0 })
      : ok(1)
  return chain(all([racks, fills]), ([perDay, fillsPerDay]) => ok({ racks: perDay, fills: fillsPerDay }))
}

interface Feed {
  /** g per rack */
  readonly dose: number
  /** g into a fresh fill */
  readonly charge: number
  readonly uncertainty: number
}

/** What the pump gives: under probe control what holds the target, else what its last test says. */
function feedOf(input: TankInput, { model, water, window, arriving }: ServiceParts): Outcome<Feed> {
  if (input.pump.control === 'probe')
    return chain(all([model, water, window, arriving]), ([m, r, { target }, more]) =>
      ok({ dose: Math.max(0, target - more) * r.value, charge: target * volumeOf(m), uncertainty: 0 }),
    )
  return chain(all([model, water]), ([m]) =>
    chain(all([input.dose, input.density, charge(input, m, window)]), ([dose, rho, grams]) =>
      ok({
        dose: dose.value * rho.value,
        charge: grams,
        uncertainty: dose.value > 0 ? dose.expanded / dose.value : 0,
      }),
    ),
  )
}

/** g into a fresh fill: what the pump gives in its seconds; without seconds, what the target takes. */
function charge(input: TankInput, model: WashModel, window: Outcome<TankWindow>): Outcome<number> {
  if (model.kind === 'dump-and-refill') return ok(0)
  const { initialChargeSeconds } = input.pump
  if (initialChargeSeconds === null) return chain(window, ({ target }) => ok(target * model.volume))
  const seconds = read(initialChargeSeconds, 'pump.initialChargeSeconds', { low: 0 })
  return chain(all([seconds, input.flow, input.density]), ([s, q, rho]) =>
    ok((inUnit(s, 's') * q.value * rho.value) / 60),
  )
}
