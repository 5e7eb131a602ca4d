import { fail, type Outcome } from '../outcome'
import type { Machine } from '../records'
import type { Estimate } from '../statistics/estimate'
import { exactly } from '../statistics/make-estimate'
import { propagate } from '../statistics/propagate'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'

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
