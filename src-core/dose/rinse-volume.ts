import { oncePer } from '../once'
import { fail, ok, type Outcome } from '../outcome'
import type { RinseWater } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { inUnit } from '../units/quantity'
import { read, readNumber } from '../units/read'

/**
 * Standard uncertainty of the fresh rinse water per rack when the record states none, percent. Judgement, except the
 * data plate: volume goes with the root of pressure at fixed jets (derived), so 15 to 25 psi around a plate's 20 psi
 * is -13 to +12 %, and 12.6 %/sqrt(3) = 7.3 %.
 */
export const RINSE_SPREAD = { measured: 2, 'flow-and-seconds': 3, 'data-plate': 7.3 } as const

/**
 * Fresh final-rinse water of one rack, L, with its doubt: caught or metered, flow x seconds, or the data plate.
 *
 * Problems: `missing` rinse volume; those of `read` above zero under `machine.rinse`.
 */
export const rinseVolume = (rinse: RinseWater | null): Outcome<Estimate<'L'>> =>
  rinse === null ? fail({ code: 'missing', field: 'machine.rinse', needed: 'rinse-volume' }) : volumeOf(rinse)

const volumeOf = oncePer((rinse: RinseWater): Outcome<Estimate<'L'>> => {
  const volume = rinse.kind === 'flow-and-seconds' ? fromFlow(rinse) : perRack(rinse.perRack)
  if (!volume.ok) return volume
  const spread =
    rinse.spread === null
      ? ok(RINSE_SPREAD[rinse.kind])
      : readNumber(rinse.spread, 'machine.rinse.spread', { low: 0, high: 100 })
  if (!spread.ok) return spread
  return estimate(volume.value, 'L', [
    { source: 'rinse-volume', standard: (volume.value * spread.value) / 100 },
  ])
})

const perRack = (entry: Exclude<RinseWater, { kind: 'flow-and-seconds' }>['perRack']): Outcome<number> => {
  const volume = read(entry, 'machine.rinse.perRack', { above: 0 })
  return volume.ok ? ok(inUnit(volume.value, 'L')) : volume
}

function fromFlow(rinse: Extract<RinseWater, { kind: 'flow-and-seconds' }>): Outcome<number> {
  const flow = read(rinse.flow, 'machine.rinse.flow', { above: 0 })
  if (!flow.ok) return flow
  const seconds = read(rinse.seconds, 'machine.rinse.seconds', { above: 0 })
  return seconds.ok ? ok((inUnit(flow.value, 'L/min') * inUnit(seconds.value, 's')) / 60) : seconds
}
