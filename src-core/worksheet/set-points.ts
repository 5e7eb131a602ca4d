import { feedsATank } from '../dose/feeds-a-tank'
import { tankWindow } from '../dose/tank-window'
import { productDensity } from '../drawdown/product-density'
import { chain, ok, type Outcome } from '../outcome'
import type { Id, Site, Visit } from '../records'
import { setPointOf, type SetPoint } from '../tank/set-point'
import type { Setup } from './setup-of'

/** What the controller of one tank is to be set to. */
export interface PumpSetPoint {
  readonly pumpId: Id
  /** µS/cm at 25 °C */
  readonly setPoint: Outcome<SetPoint>
}

/**
 * The set point of every probe-controlled tank as a visit knows it: from the last conductivity check made in it or
 * before, and the window of its own set-up. Kept apart from the pumps of a visit, which know nothing of other visits.
 */
export function setPointsOf(site: Site, visit: Visit, setup: Setup): readonly PumpSetPoint[] {
  const until = site.visits
    .filter((one) => one.id === visit.id || one.startedAt < visit.startedAt)
    .toSorted((a, b) => (a.startedAt < b.startedAt ? -1 : a.startedAt > b.startedAt ? 1 : 0))
  return setup.machines.flatMap((machine) =>
    machine.pumps
      .filter((pump) => pump.control === 'probe' && feedsATank(pump))
      .map((pump) => {
        const product = setup.products.find((one) => one.id === pump.productId) ?? null
        const density = chain(productDensity(product), (known) => ok(known.value))
        const checks = until.flatMap(
          (one) => one.work.find((work) => work.pumpId === pump.id)?.verifications ?? [],
        )
        return { pumpId: pump.id, setPoint: setPointOf(checks, tankWindow(pump, density)) }
      }),
  )
}
