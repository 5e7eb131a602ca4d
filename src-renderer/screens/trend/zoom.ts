import { dayFromNumber } from '#core/units/days'

/** The days shown, first and last, as day numbers. */
export interface DayRange {
  readonly from: number
  readonly to: number
}

/** Nothing is shown closer than this. */
const CLOSEST_DAYS = 14
const STEP = 0.5

const width = ({ from, to }: DayRange): number => to - from

/** Moves a range, unchanged in width, to lie inside the whole; one as wide as the whole is the whole. */
function inside(range: DayRange, whole: DayRange): DayRange {
  if (width(range) >= width(whole)) return whole
  const shift = Math.max(0, whole.from - range.from) - Math.max(0, range.to - whole.to)
  return { from: range.from + shift, to: range.to + shift }
}

const about = (range: DayRange, wide: number): DayRange => {
  const middle = range.from + width(range) / 2
  return { from: middle - wide / 2, to: middle + wide / 2 }
}

export const closer = (range: DayRange, whole: DayRange): DayRange =>
  inside(about(range, Math.max(Math.min(CLOSEST_DAYS, width(whole)), width(range) * STEP)), whole)

export const wider = (range: DayRange, whole: DayRange): DayRange =>
  inside(about(range, width(range) / STEP), whole)

/** A quarter of what is shown, earlier (-1) or later (1). */
export const along = (range: DayRange, whole: DayRange, way: -1 | 1): DayRange => {
  const shift = (way * width(range)) / 4
  return inside({ from: range.from + shift, to: range.to + shift }, whole)
}

export const isWhole = (range: DayRange, whole: DayRange): boolean =>
  range.from <= whole.from && range.to >= whole.to

/** Days worth a word on the axis: every week when close, else the first of every month, or of every second, third... */
export function tickDays({ from, to }: DayRange): readonly number[] {
  if (to - from < 63) return everyWeek(from, to)
  const firsts: number[] = []
  for (let day = Math.ceil(from); day <= to; day += 1)
    if (dayFromNumber(day).endsWith('-01')) firsts.push(day)
  const each = Math.ceil(firsts.length / MOST_TICKS)
  return firsts.filter((_, i) => i % each === 0)
}

const MOST_TICKS = 7

const everyWeek = (from: number, to: number): readonly number[] =>
  Array.from({ length: Math.floor((to - from) / 7) }, (_, i) => Math.ceil(from) + 3 + 7 * i)

/** What the keys of a chart do; null for every other key. */
export function zoomBy(key: string, range: DayRange, whole: DayRange): DayRange | null {
  switch (key) {
    case '+':
    case '=':
      return closer(range, whole)
    case '-':
      return wider(range, whole)
    case 'ArrowLeft':
      return along(range, whole, -1)
    case 'ArrowRight':
      return along(range, whole, 1)
    case 'Home':
      return whole
    default:
      return null
  }
}
