import { all, chain, fail, ok, type Outcome } from '../outcome'
import { rinseVolume } from '../dose/rinse-volume'
import type { Machine, Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { boosterRacks, boosterStrength } from './booster'

/** The heater before the final rinse, for a pump that feeds the rinse: it mixes, so a change of dose comes out late. */
export interface BoosterLag {
  /** L */
  readonly volume: Outcome<number>
  /** racks after a change before rinse or glasses say anything about it */
  readonly racksBeforeTest: Outcome<number>
  /** from the dose before to the dose after the last change of the visit; null where none was tested on both sides */
  readonly change: Outcome<BoosterChange> | null
}

/** Product in the rinse, ppm v/v, as it leaves the booster. */
export interface BoosterChange {
  readonly before: number
  readonly after: number
  readonly strengths: readonly { readonly rack: number; readonly strength: number }[]
}

type InRinse = Outcome<Estimate<'ppm-vv'>>

/**
 * Null for a pump that feeds a tank. `before` and `after`: what was tested on both sides of the last change.
 * The dose is taken to enter before the booster or in it. Problems: booster or rinse volume missing.
 */
export function boosterOfPump(
  machine: Pick<Machine, 'boosterVolume' | 'rinse'>,
  pump: Pick<Pump, 'feeds'>,
  change: { readonly before: InRinse; readonly after: InRinse } | null,
): BoosterLag | null {
  if (pump.feeds !== 'final-rinse') return null
  const volume = volumeOf(machine)
  const rinse = chain(rinseVolume(machine.rinse), (water) => ok(water.value))
  const racks = chain(all([volume, rinse]), ([V, r]) => boosterRacks(V, r))
  return {
    volume,
    racksBeforeTest: racks,
    change:
      change === null
        ? null
        : chain(all([volume, rinse, racks, change.before, change.after]), ([V, r, n, before, after]) =>
            course(V, r, n, before.value, after.value),
          ),
  }
}

function volumeOf({ boosterVolume }: Pick<Machine, 'boosterVolume'>): Outcome<number> {
  if (boosterVolume === null)
    return fail({ code: 'missing', field: 'machine.boosterVolume', needed: 'booster-volume' })
  const volume = read(boosterVolume, 'machine.boosterVolume', { above: 0 })
  return volume.ok ? ok(inUnit(volume.value, 'L')) : volume
}

/** More rows than this tell nothing more; the last one is always the wait. */
const MOST_ROWS = 12

function course(
  volume: number,
  rinse: number,
  racks: number,
  before: number,
  after: number,
): Outcome<BoosterChange> {
  const every = Math.max(1, Math.ceil(racks / MOST_ROWS))
  const at = Array.from({ length: racks + 1 }, (_, rack) => rack).filter(
    (rack) => rack % every === 0 || rack === racks,
  )
  return chain(
    all(
      at.map((rack) =>
        chain(boosterStrength({ volume, rinse, before, after, racks: rack }), (strength) =>
          ok({ rack, strength }),
        ),
      ),
    ),
    (strengths) => ok({ before, after, strengths }),
  )
}
