import { strokesOf, type Stroke } from '#core/messages/turn-words'

/** A drawing of one stroke on the dial: the line, its arrow head, the eighths counted along it, and its number. */
export interface DrawnStroke {
  readonly stroke: Stroke
  readonly path: string
  readonly head: string
  readonly counts: readonly { readonly x: number; readonly y: number; readonly eighth: number }[]
  readonly badge: Point
}

export interface Point {
  readonly x: number
  readonly y: number
}

const STEP = Math.PI / 4
/** a line that goes round more than once moves inwards by this much each turn */
const PITCH = 13

/** The point at an angle (eighths from the top, clockwise) and distance from the middle. */
export const polar = (eighths: number, radius: number, middle: number): Point => ({
  x: round(middle + radius * Math.sin(eighths * STEP)),
  y: round(middle - radius * Math.cos(eighths * STEP)),
})

/** The strokes of a move as they are drawn around a dial of this radius; the second runs inside the first. */
export function drawMove(
  eighths: number,
  backOff: number,
  radius: number,
  middle: number,
): readonly DrawnStroke[] {
  let from = 0
  return strokesOf(eighths, backOff).map((stroke, index) => {
    const sign = stroke.way === 'clockwise' ? 1 : -1
    const start = from
    from += sign * stroke.eighths
    return drawStroke(stroke, start, sign, radius - index * 24, middle)
  })
}

function drawStroke(
  stroke: Stroke,
  start: number,
  sign: number,
  radius: number,
  middle: number,
): DrawnStroke {
  const along = (done: number): Point =>
    polar(start + sign * done, Math.max(30, radius - Math.max(0, done - 7) * (PITCH / 8)), middle)
  const steps = Math.max(2, Math.ceil(stroke.eighths * 6))
  const points = Array.from({ length: steps + 1 }, (_, i) => along((i / steps) * stroke.eighths))
  const counts = Array.from({ length: Math.min(7, stroke.eighths) }, (_, i) => {
    const done = i + 1
    return { ...polar(start + sign * done, radius + 22, middle), eighth: done }
  })
  return {
    stroke,
    path: points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join(''),
    head: arrowHead(along(stroke.eighths - 0.35), along(stroke.eighths)),
    counts,
    badge: along(stroke.eighths / 2),
  }
}

function arrowHead(from: Point, tip: Point): string {
  const angle = Math.atan2(tip.y - from.y, tip.x - from.x)
  const corner = (turn: number): string =>
    `${round(tip.x - 19 * Math.cos(angle + turn))} ${round(tip.y - 19 * Math.sin(angle + turn))}`
  return `M${tip.x} ${tip.y}L${corner(0.5)}L${corner(-0.5)}z`
}

const round = (value: number): number => Math.round(value * 100) / 100
