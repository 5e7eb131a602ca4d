import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Instrument, TestMethod } from '../records'
import { correctionFor, limitsFor, type HowTested } from './correction'
import { CYLINDER_TOLERANCES } from './cylinder-tolerances'
import { secondsNeeded, type WantedTest } from './flow-plan'
import { usableShare } from './room'
import { GRADUATIONS_NEEDED } from './series-limits'
import type { TestConditions, VolumeDoubt } from './types'
import { volumeDoubt } from './volume-doubt'

/** One instrument a test could be made with. */
export interface Candidate {
  readonly instrumentId: string
  /** in the unit read: mL or g; null when unknown */
  readonly capacity: number | null
  readonly graduation: number | null
  /** true mL one run may take without leaving the scale; null when the capacity is unknown */
  readonly room: number | null
  /** true mL per unit read */
  readonly factor: number
  readonly doubt: VolumeDoubt
}

/**
 * An instrument seen as a candidate for a test made the same way. Problems as `testFlow` has for its instrument.
 */
export function candidate(
  how: HowTested,
  conditions: Omit<TestConditions, 'instrument'>,
  instrument: Instrument,
): Outcome<Candidate> {
  const here = { ...conditions, instrument }
  return chain(
    all([correctionFor(how, here), limitsFor(how, here)]),
    ([{ tube, density, factor }, limits]) => {
      const readingsPerRun = how.method === 'catch' ? 1 : 2
      const inputs = { limits, tube, density, readings: [], readingsPerRun, rollers: conditions.rollers }
      return chain(volumeDoubt(inputs), (doubt) =>
        ok({
          instrumentId: instrument.id,
          capacity: limits.capacity,
          graduation: limits.graduation,
          room: limits.capacity === null ? null : limits.capacity * factor * usableShare(how.method),
          factor,
          doubt,
        }),
      )
    },
  )
}

/** Whether a run expected to take `volume` mL can be read: it stays on the scale, even if somewhat more comes. */
export const holds = (tool: Candidate, volume: number): boolean =>
  tool.room === null || volume <= tool.room * (1 + 1e-9)

export interface TestPlan {
  readonly instrumentId: string
  /** s of each run */
  readonly seconds: number
  /** mL of each run */
  readonly volume: number
}

/**
 * The test that reaches a wanted precision soonest: the time is worked out anew for every instrument, since a larger
 * cylinder has a larger tolerance, and those the volume does not fit are passed over.
 *
 * Problems: `missing` instrument when there is none; else the problem of the last one tried, `unreachable-precision`
 * when none fits.
 */
export function planTest(wanted: WantedTest, tools: readonly Candidate[]): Outcome<TestPlan> {
  let best: TestPlan | null = null
  let why: Outcome<never> = fail({ code: 'missing', field: 'instruments', needed: 'instrument' })
  for (const tool of tools) {
    const seconds = secondsNeeded(wanted, tool.doubt)
    if (!seconds.ok) {
      why = seconds
      continue
    }
    const volume = (wanted.flow * seconds.value) / 60
    if (!holds(tool, volume)) why = fail({ code: 'cannot-compute', reason: 'unreachable-precision' })
    else if (best === null || seconds.value < best.seconds)
      best = { instrumentId: tool.instrumentId, seconds: seconds.value, volume }
  }
  return best === null ? why : ok(best)
}

export interface RightSize {
  /** the instrument to take; null when none at hand holds a run */
  readonly instrumentId: string | null
  /** the standard size to look for, mL: the smallest of ASTM E1272 that holds a run */
  readonly standardSize: number | null
  /** s needed for enough marks to pass in the instrument named; null when unknown, or when it holds no such run */
  readonly secondsForMarks: number | null
}

/** The smallest size of ASTM E1272 in which a run of `volume` mL stays on the scale; null beyond the largest. */
export const standardSizeFor = (volume: number, method: TestMethod): number | null =>
  CYLINDER_TOLERANCES.find((row) => row.capacity * usableShare(method) >= volume * (1 - 1e-9))?.capacity ??
  null

/**
 * The smallest instrument that holds a run of `flow` mL/min over `seconds` s and does not come near its end; one in
 * which enough marks can pass is taken before one in which they cannot.
 */
export function rightSize(
  flow: number,
  seconds: number,
  method: TestMethod,
  tools: readonly Candidate[],
): RightSize {
  const volume = (flow * seconds) / 60
  const fitting = tools
    .filter((tool) => tool.room !== null && holds(tool, volume))
    .toSorted((a, b) => Number(!showsMarks(a)) - Number(!showsMarks(b)) || (a.room ?? 0) - (b.room ?? 0))[0]
  const marks = fitting === undefined || !showsMarks(fitting) ? null : (60 * volumeOfMarks(fitting)) / flow
  return {
    instrumentId: fitting?.instrumentId ?? null,
    standardSize: Number.isFinite(volume) && volume >= 0 ? standardSizeFor(volume, method) : null,
    secondsForMarks: marks !== null && Number.isFinite(marks) ? marks : null,
  }
}

/** True mL while enough marks pass; not finite where the marks are unknown. */
const volumeOfMarks = ({ graduation, factor }: Candidate): number =>
  graduation === null ? Number.POSITIVE_INFINITY : GRADUATIONS_NEEDED * graduation * factor

const showsMarks = (tool: Candidate): boolean =>
  Number.isFinite(volumeOfMarks(tool)) && holds(tool, volumeOfMarks(tool))
