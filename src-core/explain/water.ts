import { all, chain, ok, type Outcome } from '../outcome'
import type { EntryOf, Water } from '../records'
import { unitSymbol } from '../units/format'
import type { DecimalSign } from '../units/parse'
import { HARDNESS_CLASS_ENDS, type HardnessClass } from '../water/hardness'
import { HELD_WATER } from '../water/residue'
import { siteWater, type SiteWater } from '../water/site-water'
import { SOLIDS_FACTOR } from '../water/solids'
import { explainLangelier, explainRyznar } from './saturation'
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
    langelier: explainLangelier(water, found, sign),
    ryznar: explainRyznar(water, found, sign),
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
