/**
 * Correct significant digits of a result, as NIST StRD counts them: -log10 of the relative error, or of the absolute
 * one when the certified value is 0. 17 when equal.
 */
export function digits(found: number, certified: number): number {
  if (found === certified) return 17
  const error = Math.abs(found - certified)
  return -Math.log10(certified === 0 ? error : error / Math.abs(certified))
}
