import { feedsATank } from '../dose/feeds-a-tank'
import { rinseVolume } from '../dose/rinse-volume'
import { productDensity } from '../drawdown/product-density'
import { fail, type Outcome } from '../outcome'
import type { Machine, Product, Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { tankResult, type TankResult } from './tank-result'

/** The last test of a pump, as far as its wash tank is concerned. */
export interface TestedPump {
  readonly flow: Outcome<Estimate<'mL/min'>>
  readonly dose: Outcome<Estimate<'mL/rack'>>
}

/**
 * The wash a pump feeds, straight from the records and its last test; null for a pump that feeds the final rinse.
 * An untested pump says `no-runs` where a flow is needed; what needs none still stands.
 */
export function tankOfPump(input: {
  readonly machine: Machine
  readonly pump: Pump
  readonly product: Product | null
  readonly tested: TestedPump | null
}): TankResult | null {
  const { machine, pump, product, tested } = input
  if (!feedsATank(pump)) return null
  const untested = fail({ code: 'no-runs' })
  return tankResult({
    machine,
    pump,
    flow: tested?.flow ?? untested,
    dose: tested?.dose ?? untested,
    density: productDensity(product),
    rinse: rinseVolume(machine.rinse),
  })
}
