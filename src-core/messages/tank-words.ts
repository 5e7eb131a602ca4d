import type { Outcome } from '../outcome'
import type { SetPoint } from '../tank/set-point'
import type { TankResult } from '../tank/tank-result'
import { formatEstimate, formatNumber, formatPlaces } from '../units/format'
import type { DecimalSign } from '../units/parse'
import { sentence } from './sentence'

/** The set point of a controller, its window, and what it was worked out from. */
export function setPointWords(point: SetPoint, sign: DecimalSign): string {
  const whole = (value: number): string => formatPlaces(value, 0, sign)
  return (
    `Set point ${whole(point.target)} µS/cm at 25 °C; the window is ${whole(point.low)} to ${whole(point.high)}. ` +
    `Water ${whole(point.water)} and ${whole(point.perGram)} for each g/L, as in the last conductivity check. ` +
    'A fouled probe holds more than this says: titrate.'
  )
}

/** How far the strength swings within a rack where the dose goes in all at once. g/L. */
export function swingWords(
  swing: { readonly peak: number; readonly trough: number },
  sign: DecimalSign,
): string {
  const number = (value: number): string => formatNumber(value, 3, sign)
  return (
    `The dose goes in all at once, so every rack swings between ${number(swing.trough)} and ${number(swing.peak)} g/L ` +
    'once settled: test just before a dose or just after one, and say which.'
  )
}

/**
 * The wash a pump feeds, for a page without a chart: where it settles, how it swings, the set point that holds it.
 * `setPoint` null where no probe holds the strength. What is not known is left out; the page says elsewhere why.
 */
export function tankSentences(
  tank: TankResult,
  setPoint: Outcome<SetPoint> | null,
  sign: DecimalSign,
): readonly string[] {
  return [
    ...(tank.settlesAt.ok
      ? [`The tank settles at ${formatEstimate(tank.settlesAt.value, sign).whole}.`]
      : []),
    ...(tank.swing?.ok === true ? [swingWords(tank.swing.value, sign)] : []),
    ...(setPoint === null
      ? []
      : [
          setPoint.ok
            ? setPointWords(setPoint.value, sign)
            : `A probe holds the strength; its set point is not known. ${sentence(setPoint.problem)}`,
        ]),
  ]
}
