import type { Entry } from '../records'
import { fail, ok, type Outcome } from '../outcome'
import { UNITS, type UnitName } from '../units/dimensions'
import { convertExactly } from '../units/quantity'
import { readNumber } from '../units/read'
import type { CodeLimit, LimitAdvice, LimitFigure, Standing } from './types'

/**
 * A reading against a limit, in one unit system: the figure printed in the reading's own unit if there is one, else the
 * governing figure, into whose unit the reading is converted with exact factors. 82 °C meets a rinse of "82 °C
 * (180 °F)" although it is 179.6 °F, because the code prints 82 °C; so does 180 °F, and 179.6 °F does not.
 *
 * `halfWidth` is how far the reading may be off, in the reading's unit; nearer than that to the figure is `too-close`.
 * The figure itself counts as meeting it. Problems: the reading is missing, unreadable, or measures something else.
 */
export function compareWithLimit(
  reading: Entry | null,
  limit: CodeLimit,
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
  return ok({ limit, figure, reading: value, standing: standing(value, figure.value, limit.bound, width) })
}

/** The same for a value already worked out in a unit the limit prints. */
export function standing(value: number, figure: number, bound: 'min' | 'max', halfWidth: number): Standing {
  if (halfWidth > 0 && Math.abs(value - figure) < halfWidth) return 'too-close'
  return (bound === 'min' ? value >= figure : value <= figure) ? 'meets' : 'misses'
}

function figureFor(limit: CodeLimit, unit: UnitName): LimitFigure | null {
  const own = limit.figures.find((figure) => figure.unit === unit)
  if (own !== undefined) return own
  const [first] = limit.figures
  return UNITS[first.unit].dimension === UNITS[unit].dimension ? first : null
}

/** A difference of one in `from`, in `to`; a temperature difference has no offset. */
const scaleBetween = (from: UnitName, to: UnitName): number =>
  Number(UNITS[from].factor) / Number(UNITS[to].factor)
