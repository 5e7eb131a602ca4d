/** How a watch shows seconds: `0:07.4`, `12:05.0`; cut, not rounded, as a watch does. */
export function face(seconds: number): string {
  const tenths = Math.floor(Math.max(0, seconds) * 10 + 1e-6)
  const minutes = Math.floor(tenths / 600)
  const rest = tenths % 600
  return `${minutes}:${String(Math.floor(rest / 10)).padStart(2, '0')}.${rest % 10}`
}

/** What is left of a countdown in whole seconds, rounded up, so that zero shows only at zero. */
export const left = (seconds: number): string => {
  const whole = Math.ceil(Math.max(0, seconds) - 1e-6)
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}
