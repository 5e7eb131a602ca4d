import { all, fail, ok, within, type Outcome } from '../outcome'

/** Conductivity at 25 °C as a line of strength: `water` µS/cm of the plain water, `perGram` µS/cm per g/L. */
export interface ConductivityLine {
  readonly water: number
  readonly perGram: number
}

/** Part of the conductivity at 25 °C added per °C; about 2 %. Source: general pages on conductivity. */
export const CONDUCTIVITY_PER_DEGREE = 0.02
const MOST = 1e7

/**
 * Conductivity at 25 °C from one read at `celsius`: kappa / (1 + 0.02 (t - 25)). µS/cm; valid 0 to 100 °C.
 * Problems: a number out of range.
 */
export function conductivityAt25(reading: number, celsius: number): Outcome<number> {
  const read = all([
    within(reading, 0, MOST, 'conductivity', 'uS/cm'),
    within(celsius, 0, 100, 'temperature', 'degC'),
  ])
  return read.ok ? ok(read.value[0] / (1 + CONDUCTIVITY_PER_DEGREE * (read.value[1] - 25))) : read
}

/** Set point, µS/cm at 25 °C, that holds a strength of `target` g/L. Problems: a number out of range. */
export function setPointFor(line: ConductivityLine, target: number): Outcome<number> {
  const read = all([checkLine(line), within(target, 0, 1e4, 'target', 'g/L-product')])
  return read.ok ? ok(read.value[0].water + read.value[0].perGram * read.value[1]) : read
}

/**
 * Strength a controller really holds, g/L, when its probe reads the fraction `reads` of the truth (1: a clean probe):
 * (setPoint / reads - water) / perGram. A fouled probe holds more. Never below zero: over salty water the set point is
 * already met and nothing is fed.
 *
 * Problems: a number out of range. Source: the controller feeds until reads x kappa = set point (derived).
 */
export function strengthHeld(line: ConductivityLine, setPoint: number, reads = 1): Outcome<number> {
  const read = all([
    checkLine(line),
    within(setPoint, 0, MOST, 'setPoint', 'uS/cm'),
    within(reads, 0.01, 10, 'probe', ''),
  ])
  if (!read.ok) return read
  const [{ water, perGram }, point, fraction] = read.value
  return ok(Math.max(0, (point / fraction - water) / perGram))
}

/**
 * Product per rack under probe control, g: the strength held times the water that leaves, the same as time control.
 * g/L and litres. Problems: a number out of range.
 */
export function probeGramsPerRack(held: number, netWater: number): Outcome<number> {
  const read = all([
    within(held, 0, 1e4, 'strength', 'g/L-product'),
    within(netWater, 0.001, 100_000, 'rinse', 'L'),
  ])
  return read.ok ? ok(read.value[0] * read.value[1]) : read
}

/**
 * The line through two titrated strengths. g/L and µS/cm at 25 °C.
 * Problems: a number out of range; `no-spread-in-x` when the strengths are equal or the conductivity does not rise.
 */
export function lineThrough(
  a: { readonly strength: number; readonly conductivity: number },
  b: { readonly strength: number; readonly conductivity: number },
): Outcome<ConductivityLine> {
  const read = all([
    within(a.strength, 0, 1e4, 'first.strength', 'g/L-product'),
    within(b.strength, 0, 1e4, 'second.strength', 'g/L-product'),
    within(a.conductivity, 0, MOST, 'first.conductivity', 'uS/cm'),
    within(b.conductivity, 0, MOST, 'second.conductivity', 'uS/cm'),
  ])
  if (!read.ok) return read
  const perGram = (b.conductivity - a.conductivity) / (b.strength - a.strength)
  if (!(perGram > 1e-3) || perGram > 1e6) return fail({ code: 'cannot-compute', reason: 'no-spread-in-x' })
  return checkLine({ water: Math.max(0, a.conductivity - perGram * a.strength), perGram })
}

function checkLine(line: ConductivityLine): Outcome<ConductivityLine> {
  const read = all([
    within(line.water, 0, MOST, 'line.water', 'uS/cm'),
    within(line.perGram, 1e-3, 1e6, 'line.perGram', 'uS/cm'),
  ])
  return read.ok ? ok({ water: read.value[0], perGram: read.value[1] }) : read
}
