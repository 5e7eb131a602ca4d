/** Derived worked example, not published: left at 24.0 +- 0.6 mL/min, found at 18.6 +- 0.6 with the mark unmoved. */
export const FELL = {
  left: { value: 24, expanded: 0.6 },
  found: { value: 18.6, expanded: 0.6 },
  relative: -0.225,
  score: 6.36,
} as const

/**
 * NIST/SEMATECH e-Handbook 6.3.2.2, individuals chart of flow-rate batches: data and printed limits, read in four public
 * copies. The limits use d2 = 1.128 as printed.
 */
export const INDIVIDUALS = {
  data: [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1],
  mean: 50.81,
  upper: 55.8041,
  lower: 45.8159,
} as const
