import { waterThatLeaves } from '../dose/wash-water'
import { fail, type Outcome } from '../outcome'
import type { Machine } from '../records'
import type { Estimate } from '../statistics/estimate'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { dumpModel, tankModel } from './model'
import type { Feeding, WashModel } from './types'

/**
 * The wash model of a machine as its record has it. Problems: tank volume or heel missing, those of
 * `waterThatLeaves` and of the models.
 */
export function modelOf(
  machine: Pick<Machine, 'wash'>,
  rinse: Outcome<Estimate<'L'>>,
  feeding: Feeding = 'with-rinse',
): Outcome<WashModel> {
  const { wash } = machine
  const water = waterThatLeaves(machine, rinse)
  if (!water.ok) return water
  if (wash.kind === 'dump-and-refill') {
    if (wash.heel === null) return fail({ code: 'missing', field: 'wash.heel', needed: 'heel-volume' })
    const heel = read(wash.heel, 'wash.heel', { low: 0 })
    return heel.ok ? dumpModel(inUnit(heel.value, 'L'), water.value.value) : heel
  }
  if (wash.volume === null) return fail({ code: 'missing', field: 'wash.volume', needed: 'tank-volume' })
  const volume = read(wash.volume, 'wash.volume', { above: 0 })
  if (!volume.ok) return volume
  return tankModel({
    volume: inUnit(volume.value, 'L'),
    rinse: water.value.value,
    carriedOut: 0,
    closure: wash.closure,
    feeding,
  })
}
