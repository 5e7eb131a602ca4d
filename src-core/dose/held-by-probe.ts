import type { Pump } from '../records'
import { feedsATank } from './feeds-a-tank'

/**
 * Whether a conductivity probe holds the strength a pump is judged by: it feeds a wash tank until the probe is content,
 * so neither seconds per rack nor the flow say how strong the wash is. A dose asked for in mL per rack is judged by the
 * seconds all the same.
 */
export const heldByProbe = (pump: ProbedPump): boolean =>
  pump.control === 'probe' &&
  pump.feeds !== undefined &&
  feedsATank({ feeds: pump.feeds }) &&
  (pump.window?.basis ?? 'g-per-L-tank') === 'g-per-L-tank'

export type ProbedPump = Partial<Pick<Pump, 'control' | 'feeds' | 'window'>>
