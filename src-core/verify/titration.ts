import { all, ok, within, type Outcome } from '../outcome'

/** Generous against any kit: mL, mol/L equivalents, mL. */
const checked = (
  titrant: number,
  strength: number,
  sample: number,
): Outcome<readonly [number, number, number]> =>
  all([
    within(titrant, 0, 10_000, 'titrant', 'mL'),
    within(strength, 0, 100, 'strength', ''),
    within(sample, 0.01, 100_000, 'sample', 'mL'),
  ])

/**
 * Alkalinity, mg/L as CaCO3, from `titrant` mL of acid of `normality` equivalents per litre in `sample` mL:
 * A N 50 000 / sample. Problems: a number out of range. Source: Standard Methods 2320 B (secondary).
 */
export function alkalinityFromAcid(titrant: number, normality: number, sample: number): Outcome<number> {
  const read = checked(titrant, normality, sample)
  return read.ok ? ok((read.value[0] * read.value[1] * 50_000) / read.value[2]) : read
}

/**
 * Low alkalinity by two pH points: (2 B - C) N 50 000 / sample, B mL to the first point, C mL to 0.3 pH below it.
 * Problems: a number out of range, C above 2 B. Source: Standard Methods 2320 B (secondary).
 */
export function lowAlkalinity(
  toFirst: number,
  toSecond: number,
  normality: number,
  sample: number,
): Outcome<number> {
  const read = checked(toFirst, normality, sample)
  if (!read.ok) return read
  const second = within(toSecond, 0, 2 * toFirst, 'titrant', 'mL')
  return second.ok ? ok(((2 * toFirst - second.value) * normality * 50_000) / sample) : second
}

/**
 * Hardness, mg/L as CaCO3, from `titrant` mL of which one mL stands for `mgPerMillilitre` mg CaCO3:
 * A B 1000 / sample; B is molarity x 100.0869 for EDTA. Problems: a number out of range.
 * Source: Standard Methods 2340 C (secondary).
 */
export function hardnessFromTitrant(
  titrant: number,
  mgPerMillilitre: number,
  sample: number,
): Outcome<number> {
  const read = checked(titrant, mgPerMillilitre, sample)
  return read.ok ? ok((read.value[0] * read.value[1] * 1000) / read.value[2]) : read
}

/** mg CaCO3 for one mL of a complexing titrant of `molarity` mol/L. Molar mass of CaCO3: 100.0869 g/mol. */
export const caCO3PerMillilitre = (molarity: number): number =>
  Number.isFinite(molarity) ? Math.min(1e6, Math.max(0, molarity)) * 100.0869 : 0

/**
 * Available chlorine, mg/L, from `titrant` mL of thiosulfate of `normality` equivalents per litre, less a `blank`
 * (negative for a blank that was titrated back): (A - B) N 35 450 / sample.
 * Problems: a number out of range, a blank above the reading. Source: Standard Methods 4500-Cl B (secondary).
 */
export function chlorineFromThiosulfate(
  titrant: number,
  normality: number,
  sample: number,
  blank = 0,
): Outcome<number> {
  const read = checked(titrant, normality, sample)
  if (!read.ok) return read
  const zero = within(blank, -10_000, titrant, 'blank', 'mL')
  return zero.ok ? ok(((titrant - zero.value) * normality * 35_450) / sample) : zero
}

/** Parts of an alkalinity, mg/L as CaCO3. */
export interface AlkalinitySpecies {
  readonly hydroxide: number
  readonly carbonate: number
  readonly bicarbonate: number
}

/**
 * Hydroxide, carbonate and bicarbonate from the two end points, all mg/L as CaCO3: `phenolphthalein` P up to `total` M.
 * Below M/2: carbonate 2P, bicarbonate M - 2P. Above: hydroxide 2P - M, carbonate 2 (M - P).
 * Problems: a number out of range, P above M. Source: Standard Methods 2320 B, table (secondary).
 */
export function alkalinitySpecies(phenolphthalein: number, total: number): Outcome<AlkalinitySpecies> {
  const whole = within(total, 0, 1e6, 'total', 'mg/L-CaCO3')
  if (!whole.ok) return whole
  const part = within(phenolphthalein, 0, total, 'phenolphthalein', 'mg/L-CaCO3')
  if (!part.ok) return part
  const P = part.value
  const M = whole.value
  return ok(
    P <= M / 2
      ? { hydroxide: 0, carbonate: 2 * P, bicarbonate: M - 2 * P }
      : { hydroxide: 2 * P - M, carbonate: 2 * (M - P), bicarbonate: 0 },
  )
}
