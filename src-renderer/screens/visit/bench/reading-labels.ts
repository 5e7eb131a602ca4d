import type { Instrument, TestMethod } from '#core/records/index'
import type { UnitName } from '#core/units/dimensions'
import { unitsFor, type UnitSystem } from '../../../fields/units-for'

/** What the readings of a run are called. `start` null: this method reads once. */
export const readingLabels = (method: TestMethod): { readonly start: string | null; readonly end: string } =>
  ({
    'draw-down': { start: 'Level before', end: 'Level after' },
    catch: { start: null, end: 'Caught' },
    weighed: { start: 'Weight before', end: 'Weight after' },
  })[method]

/** Units a reading may be in: first the one the instrument is marked in. */
export function readingUnits(
  method: TestMethod,
  instrument: Instrument | null,
  system: UnitSystem,
): readonly [UnitName, ...UnitName[]] {
  const usual: readonly [UnitName, ...UnitName[]] = unitsFor(
    method === 'weighed' ? 'weighed' : 'caught',
    system,
  )
  const own = instrument?.graduation?.unit ?? instrument?.capacity?.unit
  return own !== undefined && usual.includes(own) ? [own, ...usual.filter((unit) => unit !== own)] : usual
}
