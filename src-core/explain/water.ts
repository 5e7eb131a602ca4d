import { all, chain, ok, type Outcome } from '../outcome'
import type { EntryOf, Water } from '../records'
import { formatNumber, unitSymbol } from '../units/format'
import type { DecimalSign } from '../units/parse'
import { readNumber } from '../units/read'
import { HARDNESS_CLASS_ENDS, type HardnessClass } from '../water/hardness'
import { HELD_WATER } from '../water/residue'
import { siteWater, type SiteWater } from '../water/site-water'
import { SOLIDS_FACTOR } from '../water/solids'
import type { Working } from './types'
import { line, put } from './working'

/** The working of everything a screen shows about a site's water. */
export interface WaterWorkings {
  readonly hardness: Outcome<Working>
  readonly solids: Outcome<Working>
  readonly langelier: Outcome<Working>
  readonly ryznar: Outcome<Working>
  readonly residue: Outcome<Working>
}

const CLASS_NAMES: Readonly<Record<HardnessClass, string>> = {
  soft: 'soft',
  'moderately-hard': 'moderately hard',
  hard: 'hard',
  'very-hard': 'very hard',
}

/** Problems: those of `siteWater`, part by part. `rinse` as there. */
export function explainWater(
  water: Water,
  rinse: EntryOf<'temperature'> | null,
  sign: DecimalSign = 'point',
): WaterWorkings {
  const found = siteWater(water, rinse)
  return {
    hardness: hardness(water, found, sign),
    solids: solids(water, found, sign),
    langelier: saturation(water, found, sign),
    ryznar: ryznar(water, found, sign),
    residue: residue(found, sign),
  }
}

function hardness(water: Water, found: SiteWater, sign: DecimalSign): Outcome<Working> {
  return chain(found.hardness, (value) => {
    const entry = water.hardness
    const typed = Number(entry?.value ?? 0)
    const unit = unitSymbol(entry?.unit ?? 'mg/L-CaCO3')
    const factor = typed === 0 ? 1 : value.mgPerLitre / typed
    const { soft, hard } = HARDNESS_CLASS_ENDS
    return ok({
      title: `Hardness: ${CLASS_NAMES[value.class]}`,
      formula: 'H = reading × factor of its degree',
      inputs: [line('h', 'Reading', typed, unit), line('f', `mg/L as CaCO3 in one ${unit}`, factor)],
      substituted: `H = ${put(typed, sign)} × ${put(factor, sign)}`,
      result: line('H', 'Hardness', value.mgPerLitre, 'mg/L as CaCO3'),
      source: 'Classes: U.S. Geological Survey. Degrees: their definitions.',
      assumptions: [
        `Up to ${soft} is soft, up to ${HARDNESS_CLASS_ENDS['moderately-hard']} moderately hard, up to ${hard} hard. The survey leaves the gaps between its whole numbers open; we close them upwards.`,
      ],
    })
  })
}

function solids(water: Water, found: SiteWater, sign: DecimalSign): Outcome<Working> {
  return chain(found.solids, (value) => {
    const measured = found.solidsFrom === 'measured'
    const typed = Number((measured ? water.solids : water.conductivity)?.value ?? 0)
    const unit = (measured ? water.solids : water.conductivity)?.unit ?? 'uS/cm'
    const factor = measured ? 1 : SOLIDS_FACTOR.usual
    const scale = unit === 'mS/cm' ? 1000 : 1
    return ok({
      title: 'Dissolved solids',
      formula: measured ? 'S = reading' : 'S = 0.64 × conductivity at 25 °C',
      inputs: measured
        ? [line('S', 'Reading', typed, 'mg/L')]
        : [
            line('f', 'mg/L for one µS/cm', factor),
            line('κ', 'Conductivity at 25 °C', typed * scale, 'µS/cm'),
          ],
      substituted: measured
        ? `S = ${put(typed, sign)}`
        : `S = ${put(factor, sign)} × ${put(typed * scale, sign)}`,
      result: line('S', 'Dissolved solids', value.value, 'mg/L'),
      source: measured
        ? 'As recorded.'
        : 'Water-quality pages: 0.64 is usual, 0.55 to 0.75 from water to water.',
      assumptions: measured
        ? []
        : ['A pen that shows solids is a conductivity meter too. Softening does not lower this figure.'],
    })
  })
}

const stands = (found: SiteWater): readonly string[] => [
  ...(found.calciumFromHardness
    ? ['The whole hardness stands in for calcium, so the index is a little high.']
    : []),
  'The index says which way a water leans, not how fast.',
]

function saturation(water: Water, found: SiteWater, sign: DecimalSign): Outcome<Working> {
  return chain(all([found.index, readNumber(water.pH, 'water.pH')]), ([s, pH]) => {
    const two = (value: number): string => formatNumber(value, 4, sign)
    return ok({
      title: 'Langelier index at rinse temperature',
      formula: 'pHs = 9.3 + A + B − C − D; index = pH − pHs',
      inputs: [
        line('A', 'Dissolved solids, (log S − 1)/10', s.a),
        line('B', 'Temperature, −13.12 log (t + 273) + 34.55', s.b),
        line('C', 'Calcium, log Ca − 0.4', s.c),
        line('D', 'Alkalinity, log Alk', s.d),
        line('pH', 'pH as measured', pH),
      ],
      substituted: `index = ${two(pH)} − (9.3 + ${two(s.a)} + ${two(s.b)} − ${two(s.c)} − ${two(s.d)})`,
      result: line('LSI', 'Langelier index', s.langelier),
      source: 'Langelier (1936) in the form handbooks print, with 273 rather than 273.15.',
      assumptions: stands(found),
    })
  })
}

function ryznar(water: Water, found: SiteWater, sign: DecimalSign): Outcome<Working> {
  return chain(all([found.index, readNumber(water.pH, 'water.pH')]), ([s, pH]) =>
    ok({
      title: 'Ryznar index at rinse temperature',
      formula: 'RSI = 2 × pHs − pH',
      inputs: [
        line('pHs', 'pH at which the water is in balance', s.saturationPH),
        line('pH', 'pH as measured', pH),
      ],
      substituted: `RSI = 2 × ${put(s.saturationPH, sign)} − ${put(pH, sign)}`,
      result: line('RSI', 'Ryznar index', s.ryznar),
      source: 'Ryznar’s index from the same pHs, in the form handbooks print.',
      assumptions: stands(found),
    }),
  )
}

function residue(found: SiteWater, sign: DecimalSign): Outcome<Working> {
  return chain(all([found.residue, found.solids]), ([left, value]) =>
    ok({
      title: 'What dries on a glass',
      formula: 'm = held water × S / 1000',
      inputs: [
        line('v', 'Held when the water beads', HELD_WATER.beaded, 'mL'),
        line('S', 'Dissolved solids', value.value, 'mg/L'),
      ],
      substituted: `m = ${put(HELD_WATER.beaded, sign)} × ${put(value.value, sign)} / 1000`,
      result: line('m', 'Left on one glass', left.beaded, 'mg'),
      source: 'Mass balance (derived).',
      assumptions: [
        `Nobody has published how much water stays on a glass: ${put(HELD_WATER.beaded, sign)} mL beaded and ${put(HELD_WATER.sheeted, sign)} mL sheeted are assumed, so compare waters with it and do not read visibility off it.`,
      ],
    }),
  )
}
