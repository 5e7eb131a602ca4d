import { fail, type Outcome } from '../outcome'
import type { Machine } from '../records'
import type { Estimate } from '../statistics/estimate'
import { exactly } from '../statistics/make-estimate'
import { propagate } from '../statistics/propagate'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { dumpModel, tankModel } from './model'
import type { Feeding, WashModel } from './types'

/**
 * Water that leaves with product in it, L per rack: the fresh rinse less what ware and vapour carry away; on a
 * dump-and-refill machine what is filled each cycle, or the rinse where that is the next wash.
 * `rinse` is the machine's fresh rinse water per rack. What is carried out counts as nothing where it is not recorded.
 *
 * Problems: those of `rinse`, a volume that does not read, `no-overflow`.
 */
export function waterThatLeaves(
  machine: Pick<Machine, 'wash'>,
  rinse: Outcome<Estimate<'L'>>,
): Outcome<Estimate<'L'>> {
  const { wash } = machine
  if (wash.kind === 'dump-and-refill') {
    if (wash.fill === null) return rinse
    const fill = read(wash.fill, 'wash.fill', { above: 0 })
    return fill.ok ? exactly(inUnit(fill.value, 'L'), 'L') : fill
  }
  if (!rinse.ok || wash.carriedOut === null) return rinse
  const out = read(wash.carriedOut, 'wash.carriedOut', { low: 0 })
  if (!out.ok) return out
  const net = rinse.value.value - inUnit(out.value, 'L')
  if (!(net > 0)) return fail({ code: 'cannot-compute', reason: 'no-overflow' })
  return propagate(net, 'L', [{ of: rinse.value, sensitivity: 1 }])
}

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
