import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { EntryOf, Water } from '../records'
import type { Estimate } from '../statistics/estimate'
import { exactly } from '../statistics/make-estimate'
import { inUnit } from '../units/quantity'
import { read, readNumber } from '../units/read'
import { hardness, type HardnessReading } from './hardness'
import { residueOnGlass, HELD_WATER } from './residue'
import { saturation, scaleTendency, type Saturation, type ScaleTendency } from './saturation'
import { solidsFromConductivity } from './solids'

/** A site's water, worked out for the rinse. */
export interface SiteWater {
  readonly hardness: Outcome<HardnessReading>
  /** mg/L; measured, else from conductivity */
  readonly solids: Outcome<Estimate<'mg/L'>>
  readonly solidsFrom: 'measured' | 'conductivity' | 'none'
  readonly index: Outcome<Saturation & { readonly tendency: ScaleTendency }>
  /** calcium was not recorded and the whole hardness stands in: the index is then a little high */
  readonly calciumFromHardness: boolean
  /** mg per glass, sheeted and beaded */
  readonly residue: Outcome<{ readonly sheeted: number; readonly beaded: number }>
}

/**
 * Hardness, solids, saturation and what is left on a glass. The index is worked out at `rinse`, the rinse temperature,
 * and at the recorded water temperature when that is not known: cold water says too little about a hot rinse.
 * Problems name the entry of the water record that is missing or wrong.
 */
export function siteWater(water: Water, rinse: EntryOf<'temperature'> | null): SiteWater {
  const hard = hardness(water.hardness, 'water.hardness')
  const solids = solidsOf(water)
  const calcium =
    water.calcium === null
      ? chain(hard, (one) => ok(one.mgPerLitre))
      : milligrams(water.calcium, 'water.calcium')
  return {
    hardness: hard,
    solids,
    solidsFrom: water.solids !== null ? 'measured' : water.conductivity !== null ? 'conductivity' : 'none',
    index: chain(
      all([
        readNumber(water.pH, 'water.pH'),
        celsius(rinse ?? water.temperature),
        solids,
        calcium,
        milligrams(water.alkalinity, 'water.alkalinity'),
      ]),
      ([pH, degrees, dissolved, ca, alkalinity]) =>
        chain(
          saturation({ pH, celsius: degrees, solids: dissolved.value, calcium: ca, alkalinity }),
          (found) => ok({ ...found, tendency: scaleTendency(found.langelier) }),
        ),
    ),
    calciumFromHardness: water.calcium === null && water.hardness !== null,
    residue: chain(solids, ({ value }) =>
      chain(
        all([residueOnGlass(HELD_WATER.sheeted, value), residueOnGlass(HELD_WATER.beaded, value)]),
        ([sheeted, beaded]) => ok({ sheeted, beaded }),
      ),
    ),
  }
}

function solidsOf(water: Water): Outcome<Estimate<'mg/L'>> {
  if (water.solids !== null) {
    const measured = read(water.solids, 'water.solids', { low: 0, high: 100_000 })
    return measured.ok ? exactly(inUnit(measured.value, 'mg/L'), 'mg/L') : measured
  }
  if (water.conductivity === null) return fail({ code: 'missing', field: 'water.solids', needed: 'water' })
  const conductivity = read(water.conductivity, 'water.conductivity', { low: 0 })
  return conductivity.ok ? solidsFromConductivity(inUnit(conductivity.value, 'uS/cm')) : conductivity
}

function milligrams(entry: EntryOf<'hardness'> | null, field: string): Outcome<number> {
  if (entry === null) return fail({ code: 'missing', field, needed: 'water' })
  const typed = read(entry, field, { low: 0 })
  return typed.ok ? ok(inUnit(typed.value, 'mg/L-CaCO3')) : typed
}

function celsius(entry: EntryOf<'temperature'> | null): Outcome<number> {
  if (entry === null) return fail({ code: 'missing', field: 'water.temperature', needed: 'water' })
  const typed = read(entry, 'water.temperature')
  return typed.ok ? ok(inUnit(typed.value, 'degC')) : typed
}
