import { all, ok, within, type Outcome } from '../outcome'

/** Assumed volume of water that stays on a glass, mL; nobody has published one. Judgement: 0.1 sheeted, 0.5 beaded. */
export const HELD_WATER = { sheeted: 0.1, beaded: 0.5 } as const

/** m/s2, standard. */
const GRAVITY = 9.80665

/**
 * Solids left on a glass, mg: held water (mL) x dissolved solids (mg/L) / 1000. For comparing waters and rinses; whether
 * spots are seen it cannot say. Problems: a number out of range. Source: mass balance (derived).
 */
export function residueOnGlass(heldWater: number, solids: number): Outcome<number> {
  const read = all([
    within(heldWater, 0, 100, 'glass.heldWater', 'mL'),
    within(solids, 0, 100_000, 'water.solids', 'mg/L'),
  ])
  return read.ok ? ok((read.value[0] * read.value[1]) / 1000) : read
}

/** Water of an even film, mL: area (cm2) x thickness (µm) / 10 000. Problems: a number out of range. */
export function filmVolume(area: number, thickness: number): Outcome<number> {
  const read = all([
    within(area, 0, 100_000, 'glass.area', 'cm2'),
    within(thickness, 0, 10_000, 'glass.film', 'µm'),
  ])
  return read.ok ? ok((read.value[0] * read.value[1]) / 10_000) : read
}

export interface DrainingFilm {
  /** at the lower edge, µm */
  readonly foot: number
  /** over the whole height, µm: two thirds of the foot */
  readonly mean: number
}

/**
 * Film left on an upright wall of `height` m after draining `seconds` s: h = sqrt(nu z / (g t)), nu in m2/s.
 * Valid once the film is thinner than what it started with: from about a second. Problems: a number out of range.
 * Source: H. Jeffreys, "The Draining of a Vertical Plate", Proc. Camb. Phil. Soc. (1930); the formula from memory.
 */
export function drainingFilm(height: number, seconds: number, viscosity: number): Outcome<DrainingFilm> {
  const read = all([
    within(height, 0, 2, 'glass.height', 'm'),
    within(seconds, 1, 86_400, 'glass.seconds', 's'),
    within(viscosity, 1e-7, 1e-4, 'water.viscosity', 'm2/s'),
  ])
  if (!read.ok) return read
  const [z, t, nu] = read.value
  const foot = 1e6 * Math.sqrt((nu * z) / (GRAVITY * t))
  return ok({ foot, mean: (2 / 3) * foot })
}

/** Kinematic viscosity of water, 1e-6 m2/s, every 10 °C. Source: steam tables, from memory. */
const VISCOSITY = [
  1.787, 1.307, 1.004, 0.8007, 0.6581, 0.5535, 0.474, 0.4127, 0.3643, 0.3255, 0.2945,
] as const

/** Kinematic viscosity of water at 0 to 100 °C, m2/s, between the rows on the logarithm. Problems: out of range. */
export function waterViscosity(celsius: number): Outcome<number> {
  const read = within(celsius, 0, 100, 'water.temperature', 'degC')
  if (!read.ok) return read
  const row = Math.min(VISCOSITY.length - 2, Math.floor(celsius / 10))
  const part = celsius / 10 - row
  const below = Math.log(VISCOSITY[row] ?? 1)
  const above = Math.log(VISCOSITY[row + 1] ?? 1)
  return ok(1e-6 * Math.exp(below + part * (above - below)))
}

/** Density of dried salts, g/cm3: between calcite's 2.71 and table salt's 2.16, from memory. */
const SALT_DENSITY = 2.7

/**
 * How thick the dried film is, nm, where a film of water (µm) with `solids` mg/L dries on `share` (above 0 to 1) of its
 * area: even is about a nanometre and unseen; gathered in rings on a hundredth of the area it shows.
 * Problems: a number out of range. Source: mass over density (derived).
 */
export function driedThickness(film: number, solids: number, share: number): Outcome<number> {
  const read = all([
    within(film, 0, 10_000, 'glass.film', 'µm'),
    within(solids, 0, 100_000, 'water.solids', 'mg/L'),
    within(share, 1e-4, 1, 'glass.share', ''),
  ])
  if (!read.ok) return read
  const [microns, mgPerLitre, part] = read.value
  // µm x mg/L is 1e-3 µg/cm2 ... over g/cm3, in nm
  return ok((microns * mgPerLitre) / (1000 * SALT_DENSITY * part))
}
