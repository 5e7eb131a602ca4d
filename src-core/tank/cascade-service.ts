import { all, fail, ok, within, type Outcome } from '../outcome'
import { cascadeUnchecked, type CascadeState, type TwoTanks } from './cascade'
import { MOST_RACKS, serviceOf } from './service'
import { summarize, type StrengthPoint, type StrengthSeries } from './service-summary'

/** What is put into the two tanks: g per rack, and g into each fresh fill. */
export interface PairFeed {
  readonly dose: CascadeState
  readonly charge: CascadeState
}

type Limits = { readonly low: number; readonly high: number } | null

export interface PairServiceInput {
  readonly tanks: TwoTanks
  /** what the pump in question feeds, known to a relative expanded uncertainty of `uncertainty` */
  readonly own: PairFeed
  readonly uncertainty: number
  /** what else of the same product is fed, taken as it is */
  readonly besides: PairFeed
  readonly racks: number
  readonly fills: number
  /** g/L */
  readonly windows: { readonly first: Limits; readonly second: Limits }
}

export interface PairService {
  readonly first: StrengthSeries
  readonly second: StrengthSeries
  /** product over the whole service, g: put in, gone over the weir, drained at fresh fills, still there */
  readonly grams: {
    readonly fed: number
    readonly overflowed: number
    readonly drained: number
    readonly left: number
  }
}

/**
 * Strength over a service day in both tanks of a cascade: `second` gets the fresh water and overflows into `first`. Both
 * are drained and filled together. The course is that of what the pump feeds plus that of what else is fed, because the
 * steps are linear; only the first of the two carries the flow's doubt.
 *
 * Problems: a number out of range; `outside-valid-range` when the tanks' waters differ.
 * Source: the steps of `cascade.ts`; soil takes nothing (assumed).
 */
export function cascadeOverService(input: PairServiceInput): Outcome<PairService> {
  const { tanks, own, besides } = input
  const feeds = [own, besides].flatMap(({ dose, charge }) => [dose, charge])
  const read = all([
    within(input.racks, 1, MOST_RACKS, 'racksPerDay', ''),
    within(input.fills, 0.01, 50, 'wash.drainAndFillsPerDay', ''),
    within(input.uncertainty, 0, 1e3, 'flow', ''),
    ...feeds.flatMap(({ first, second }) => [
      within(first, 0, 1e8, 'dose.first', 'g'),
      within(second, 0, 1e8, 'dose.second', 'g'),
    ]),
  ])
  if (!read.ok) return read
  if (tanks.first.netWater !== tanks.second.netWater)
    return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  const { racks, fillAt } = serviceOf(tanks.first, input.racks, input.fills)
  const mine = walk(tanks, own, racks, fillAt)
  const other = walk(tanks, besides, racks, fillAt)
  const seriesOf = (tank: keyof TwoTanks): StrengthSeries =>
    summarize(
      mine.stops.map((stop, i) => point(stop, other.stops[i] ?? stop, tank, input.uncertainty)),
      fillAt,
      settledIn(tanks, own, tank) + settledIn(tanks, besides, tank),
      input.windows[tank],
    )
  return ok({
    first: seriesOf('first'),
    second: seriesOf('second'),
    grams: {
      fed: mine.fed + other.fed,
      overflowed: mine.overflowed + other.overflowed,
      drained: mine.drained + other.drained,
      left: mine.left + other.left,
    },
  })
}

/** Dose over water in the second tank; the first gets what overflows there as well. */
const settledIn = ({ first }: TwoTanks, { dose }: PairFeed, tank: keyof TwoTanks): number =>
  (tank === 'second' ? dose.second : dose.first + dose.second) / first.netWater

interface Stop {
  readonly rack: number
  readonly fill: boolean
  readonly trough: CascadeState
  readonly after: CascadeState
}

function walk(tanks: TwoTanks, feed: PairFeed, racks: number, fillAt: readonly number[]) {
  const fills = new Set(fillAt)
  const gramsIn = (state: CascadeState): number =>
    state.first * tanks.first.volume + state.second * tanks.second.volume
  const fresh = {
    first: feed.charge.first / tanks.first.volume,
    second: feed.charge.second / tanks.second.volume,
  }
  const stops: Stop[] = []
  let state: CascadeState = { first: 0, second: 0 }
  let fed = 0
  let overflowed = 0
  let drained = 0
  for (let rack = 0; rack <= racks; rack += 1) {
    if (rack > 0) {
      const step = cascadeUnchecked(tanks, state, feed.dose)
      stops.push({
        rack,
        fill: false,
        trough: lowest(tanks, state, step.after, feed.dose),
        after: step.after,
      })
      state = step.after
      fed += feed.dose.first + feed.dose.second
      overflowed += step.lost
    }
    if (fills.has(rack)) {
      drained += gramsIn(state)
      state = fresh
      fed += feed.charge.first + feed.charge.second
      stops.push({ rack, fill: true, trough: fresh, after: fresh })
    }
  }
  return { stops, fed, overflowed, drained, left: gramsIn(state) }
}

/** The lowest a rack sees: a slug comes after the rinse, a dose with the rinse has no trough of its own. */
function lowest(
  tanks: TwoTanks,
  before: CascadeState,
  after: CascadeState,
  dose: CascadeState,
): CascadeState {
  const of = (tank: keyof TwoTanks): number =>
    tanks[tank].feeding === 'slug'
      ? after[tank] - dose[tank] / tanks[tank].volume
      : Math.min(before[tank], after[tank])
  return { first: of('first'), second: of('second') }
}

function point(mine: Stop, other: Stop, tank: keyof TwoTanks, relative: number): StrengthPoint {
  const [own, more] = [mine.after[tank], other.after[tank]]
  return {
    rack: mine.rack,
    strength: own + more,
    trough: Math.min(own + more, mine.trough[tank] + other.trough[tank]),
    low: more + own * Math.max(0, 1 - relative),
    high: more + own * (1 + relative),
    fill: mine.fill,
  }
}
