const VULGAR = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'] as const
const SPOKEN = [
  '',
  'one eighth',
  'a quarter',
  'three eighths',
  'a half',
  'five eighths',
  'three quarters',
  'seven eighths',
] as const

/** Eighths of a turn as they are written: `⅜`, `1½`, `2`. The sign is said by the direction, not here. */
export function turnText(eighths: number): string {
  const size = Math.abs(Math.trunc(eighths))
  const whole = Math.floor(size / 8)
  const part = VULGAR[size % 8] ?? ''
  return whole === 0 ? part || '0' : `${whole}${part}`
}

/** `⅜ turn`, `1½ turns`. */
export const turnsText = (eighths: number): string =>
  `${turnText(eighths)} ${Math.abs(eighths) > 8 ? 'turns' : 'turn'}`

/** Eighths in spoken words, for the ear: `three eighths of a turn`, `1 and a half turns`. */
export function turnSpoken(eighths: number): string {
  const size = Math.abs(Math.trunc(eighths))
  const whole = Math.floor(size / 8)
  const part = SPOKEN[size % 8] ?? ''
  if (whole === 0) return part === 'a half' ? 'half a turn' : part === '' ? 'no turn' : `${part} of a turn`
  return part === '' ? `${whole} ${whole === 1 ? 'turn' : 'turns'}` : `${whole} and ${part} turns`
}

/** The strokes of a move: how the hand goes, in order. */
export interface Stroke {
  readonly way: 'clockwise' | 'anticlockwise'
  readonly eighths: number
}

/** A move is finished clockwise; going down means going past and coming up again by `backOff`. */
export function strokesOf(eighths: number, backOff: number): readonly Stroke[] {
  if (eighths >= 0) return eighths === 0 ? [] : [{ way: 'clockwise', eighths }]
  const past: Stroke = { way: 'anticlockwise', eighths: -eighths + backOff }
  return backOff > 0 ? [past, { way: 'clockwise', eighths: backOff }] : [past]
}

/** The move as an instruction in one sentence. */
export function moveSentence(eighths: number, backOff: number): string {
  const [first, second] = strokesOf(eighths, backOff)
  if (first === undefined) return 'Leave the screw where it is.'
  const start = `Turn the screw ${first.way} ${turnsText(first.eighths)}`
  return second === undefined
    ? `${start}.`
    : `${start}, then ${second.way} ${turnsText(second.eighths)}. That leaves it ${turnsText(eighths)} down, with the slack taken up.`
}
