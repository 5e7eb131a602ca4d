/**
 * Tolerance of graduated cylinders, +- mL. Source: ASTM E1272-02(2012) Table 1; class B is twice class A. The row for
 * 1000 mL is from memory.
 */
export const CYLINDER_TOLERANCES = [
  { capacity: 5, A: 0.05, B: 0.1 },
  { capacity: 10, A: 0.1, B: 0.2 },
  { capacity: 25, A: 0.17, B: 0.34 },
  { capacity: 50, A: 0.25, B: 0.5 },
  { capacity: 100, A: 0.5, B: 1 },
  { capacity: 250, A: 1, B: 2 },
  { capacity: 500, A: 2, B: 4 },
  { capacity: 1000, A: 3, B: 6 },
] as const

export type CylinderClass = 'A' | 'B'

/**
 * Tolerance half-width in mL of a cylinder of `capacity` mL. A size between two rows takes the larger row, one beyond
 * the table the last row's share of its capacity; null for a capacity that is not above zero.
 */
export function cylinderTolerance(capacity: number, kind: CylinderClass): number | null {
  if (!(capacity > 0) || !Number.isFinite(capacity)) return null
  const row = CYLINDER_TOLERANCES.find((r) => r.capacity >= capacity)
  return row === undefined ? (capacity * (kind === 'A' ? 3 : 6)) / 1000 : row[kind]
}
