import type { Entry } from '../records'
import { fail, ok, type Outcome } from '../outcome'
import { UNITS, type UnitName } from '../units/dimensions'
import { exactFactor } from '../units/factor'
import { convertExactly } from '../units/quantity'
import { readNumber } from '../units/read'
import type { Limit, LimitAdvice, LimitFigure } from './types'

/**
 * A reading against a limit, in one unit system: the figure printed in the reading's own unit if there is one, else the
 * governing figure, into whose unit the reading is converted with exact factors. 82 °C meets a rinse of "82 °C
 * (180 °F)" although it is 179.6 °F, because the code prints 82 °C; so does 180 °F, and 179.6 °F does not.
 *
 * `halfWidth` is how far the reading may be off, in the reading's unit; nearer than that to the figure is `close`.
 * The figure itself counts as meeting it. Problems: the reading is missing, unreadable, or measures something else.
 */
export function compareWithLimit(
  reading: Entry | null,
  limit: Limit,
  field: string,
  halfWidth: number = 0,
): Outcome<LimitAdvice> {
  if (reading === null) return fail({ code: 'number-missing', field })
  const typed = readNumber(reading.value, field)
  if (!typed.ok) return typed
  const figure = figureFor(limit, reading.unit)
  if (figure === null)
    return fail({
      code: 'unit-unknown',
      field,
      text: reading.unit,
      expected: limit.figures.map((each) => each.unit),
    })
  const value = convertExactly(reading.value, reading.unit, figure.unit).toNumber()
  const width = Number.isFinite(halfWidth) ? Math.abs(halfWidth) * scaleBetween(reading.unit, figure.unit) : 0
  return ok(adviceOn(limit, figure, value, width))
}

/** The comparison itself, for a value already in the unit of the figure. */
export const adviceOn = (
  limit: Limit,
  figure: LimitFigure,
  reading: number,
  halfWidth: number,
): LimitAdvice => ({
  limit,
  figure,
  reading,
  standing: (limit.bound === 'min' ? reading >= figure.value : reading <= figure.value) ? 'meets' : 'misses',
  close: halfWidth > 0 && Math.abs(reading - figure.value) < halfWidth,
})

function figureFor(limit: Limit, unit: UnitName): LimitFigure | null {
  const own = limit.figures.find((figure) => figure.unit === unit)
  if (own !== undefined) return own
  const [first] = limit.figures
  return UNITS[first.unit].dimension === UNITS[unit].dimension ? first : null
}

/** A difference of one in `from`, in `to`; a temperature difference has no offset. */
const scaleBetween = (from: UnitName, to: UnitName): number =>
  exactFactor(from).div(exactFactor(to)).toNumber()
