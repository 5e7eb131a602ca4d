import { waterThatLeaves } from '../dose/wash-water'
import { fail, type Outcome } from '../outcome'
import type { Machine } from '../records'
import type { Estimate } from '../statistics/estimate'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { dumpModel, tankModel } from './model'
import type { WashModel } from './types'

/**
 * The wash model of a machine as its record has it: of the tank the wash happens in, or of the second one that overflows
 * into it. Problems: tank volume or heel missing, those of `waterThatLeaves` and of the models.
 */
export function modelOf(
  machine: Pick<Machine, 'wash'>,
  rinse: Outcome<Estimate<'L'>>,
  which: 'wash-tank' | 'upstream-tank' = 'wash-tank',
): Outcome<WashModel> {
  const { wash } = machine
  const water = waterThatLeaves(machine, rinse)
  if (!water.ok) return water
  if (wash.kind === 'dump-and-refill') {
    if (wash.heel === null) return fail({ code: 'missing', field: 'wash.heel', needed: 'heel-volume' })
    const heel = read(wash.heel, 'wash.heel', { low: 0 })
    return heel.ok ? dumpModel(inUnit(heel.value, 'L'), water.value.value) : heel
  }
  const [entry, field] =
    which === 'wash-tank'
      ? ([wash.volume, 'wash.volume'] as const)
      : ([wash.upstream?.volume ?? null, 'wash.upstream.volume'] as const)
  if (entry === null) return fail({ code: 'missing', field, needed: 'tank-volume' })
  const volume = read(entry, field, { above: 0 })
  if (!volume.ok) return volume
  return tankModel({
    volume: inUnit(volume.value, 'L'),
    rinse: water.value.value,
    carriedOut: 0,
    closure: wash.closure,
    feeding: wash.feeding,
  })
}
