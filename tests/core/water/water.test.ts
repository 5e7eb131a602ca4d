import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hardness, hardnessClass, hardnessFromIons } from '#core/water/hardness'
import { driedThickness, drainingFilm, filmVolume, residueOnGlass, waterViscosity } from '#core/water/residue'
import { saturation, scaleTendency } from '#core/water/saturation'
import { bicarbonateOf, BICARBONATE_LEFT, driedSolids, solidsFromConductivity } from '#core/water/solids'
import reference from '../../references/water.json'
import { everyNumberFinite, good, wild } from '../tank/support'

const byId = (id: string) => {
  const found = reference.entries.find((entry) => entry.id === id)
  if (found === undefined) throw new Error(id)
  return found
}

// tests/references/water.json says for every row where it was read
describe('hardness', () => {
  it('is one quantity in every degree: 10 °fH are 100 mg/L, 5.84 grains, 5.60 °dH, 7.02 °Clark', () => {
    const found = good(hardness({ value: '10', unit: 'deg-fH' }, 'water.hardness'))
    const at = (unit: string) => found.degrees.find((each) => each.unit === unit)?.value
    expect(found.mgPerLitre).toBe(100)
    // 1 grain per US gallon is 64.79891 mg in 3.785411784 L (NIST SP 811)
    expect(at('gpg')).toBeCloseTo(100 / (64.79891 / 3.785411784), 10)
    // 1 °dH is 10 mg CaO per litre: 17.848 mg/L as CaCO3; 1 °Clark is one grain per imperial gallon
    expect(at('deg-dH')).toBeCloseTo(100 / 17.848, 3)
    expect(at('deg-Clark')).toBeCloseTo(100 / (64.79891 / 4.54609), 3)
    expect(at('mmol/L-CaCO3')).toBeCloseTo(100 / 100.0869, 5)
  })

  // USGS prints whole numbers; the gaps between are ours to assign, upwards ends inclusive
  it.each([
    [0, 'soft'],
    [60, 'soft'],
    [60.5, 'moderately-hard'],
    [61, 'moderately-hard'],
    [120, 'moderately-hard'],
    [120.5, 'hard'],
    [121, 'hard'],
    [180, 'hard'],
    [180.1, 'very-hard'],
  ] as const)('%d mg/L is %s', (value, expected) => {
    expect(hardnessClass(value)).toBe(expected)
  })

  it('follows from calcium and magnesium', () => {
    // Standard Methods 2340 B: 2.497 read, 4.118 from memory
    expect(good(hardnessFromIons(40, 12))).toBeCloseTo(2.497 * 40 + 4.118 * 12, 12)
    // and agrees with the molar masses it is made of (CaCO3 100.087, Ca 40.078, Mg 24.305)
    expect(good(hardnessFromIons(40, 12))).toBeCloseTo((40 * 100.087) / 40.078 + (12 * 100.087) / 24.305, 1)
  })
})

describe('dissolved solids', () => {
  it.each(reference.conductivity.rows)('$uS_cm µS/cm is about $mg_L mg/L', (row) => {
    const found = good(solidsFromConductivity(row.uS_cm))
    expect(Math.abs(found.value - row.mg_L)).toBeLessThan(row.tolerance)
    expect(Math.abs(good(solidsFromConductivity(row.uS_cm, 0.55)).value - row.least)).toBeLessThan(
      row.tolerance,
    )
    expect(Math.abs(good(solidsFromConductivity(row.uS_cm, 0.75)).value - row.most)).toBeLessThan(
      row.tolerance,
    )
    // a rectangle 286 to 390 wide: half of it over the root of three
    expect(found.standard).toBeCloseTo(52 / Math.sqrt(3), 1)
  })

  it('lose carbon dioxide and water on drying: 350 mg/L with 180 of bicarbonate leave 258.5', () => {
    const { bicarbonate } = reference.derived
    expect(BICARBONATE_LEFT).toBeCloseTo(bicarbonate.factor, 4)
    expect(
      Math.abs(good(driedSolids(bicarbonate.solids, bicarbonate.bicarbonate)) - bicarbonate.left),
    ).toBeLessThan(bicarbonate.tolerance)
    expect(driedSolids(100, 200).ok).toBe(false)
    // 100 mg/L as CaCO3 is 2 meq, 122 mg of bicarbonate
    expect(bicarbonateOf(100)).toBeCloseTo(121.93, 2)
  })
})

describe('saturation indices', () => {
  it.each(['lsi_25C', 'lsi_pH8.8'])('agree with the reprinted example %s', (id) => {
    const row = byId(id)
    const { inputs, published, recomputed, tolerance } = row as unknown as {
      inputs: Record<string, number>
      published: Record<string, number>
      recomputed: Record<string, number>
      tolerance: Record<string, number>
    }
    const found = good(
      saturation({
        pH: inputs['pH'] ?? NaN,
        celsius: inputs['temp_C'] ?? NaN,
        solids: inputs['TDS_mg_L'] ?? NaN,
        calcium: inputs['Ca_hardness_mg_L_CaCO3'] ?? NaN,
        alkalinity: inputs['alkalinity_mg_L_CaCO3'] ?? NaN,
      }),
    )
    const mine: Record<string, number> = {
      A: found.a,
      B: found.b,
      C: found.c,
      D: found.d,
      pHs: found.saturationPH,
      LSI: found.langelier,
      RSI: found.ryznar,
      PSI: found.puckorius,
    }
    for (const [name, value] of Object.entries(recomputed)) expect(mine[name]).toBeCloseTo(value, 3)
    for (const [name, value] of Object.entries(published)) {
      const allowed = tolerance[name] ?? tolerance['A..D'] ?? 0.005
      // published Ryznar and Puckorius were formed from pHs already rounded to 8.2
      expect(Math.abs((mine[name] ?? NaN) - value)).toBeLessThanOrEqual(allowed)
    }
  })

  it('call the same water more scaling when it is hot, as every kettle shows', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 94, noNaN: true }), (celsius) => {
        const sample = { pH: 7.5, solids: 320, calcium: 150, alkalinity: 120 }
        const cool = good(saturation({ ...sample, celsius }))
        const warm = good(saturation({ ...sample, celsius: celsius + 1 }))
        expect(warm.langelier).toBeGreaterThan(cool.langelier)
        expect(warm.ryznar).toBeLessThan(cool.ryznar)
      }),
    )
  })

  it('name a water: scaling, in balance, dissolving', () => {
    expect([0.5, 0, -0.5].map(scaleTendency)).toEqual(['leaves-scale', 'near-balance', 'dissolves-scale'])
  })

  it('say which number lies outside the range the formula holds for', () => {
    const sample = { pH: 7.5, celsius: 25, solids: 320, calcium: 150, alkalinity: 34 }
    expect(saturation({ ...sample, calcium: 0 })).toMatchObject({
      ok: false,
      problem: { code: 'number-out-of-range', field: 'water.calcium' },
    })
  })
})

describe('what stays on a glass', () => {
  const { residue, film, dried } = reference.derived

  it.each(residue)('$held_mL mL of $solids mg/L leave $mg mg', (row) => {
    expect(good(residueOnGlass(row.held_mL, row.solids))).toBeCloseTo(row.mg, 12)
  })

  it.each(film.rows)('a draining film is $foot_um µm at the foot after $s s, $mean_um on average', (row) => {
    const found = good(drainingFilm(film.height_m, row.s, film.viscosity_m2_s))
    expect(Math.abs(found.foot / row.foot_um - 1)).toBeLessThan(5e-4)
    expect(Math.abs(found.mean / row.mean_um - 1)).toBeLessThan(5e-4)
  })

  it('makes 0.37 mL and 0.13 mg on both sides of a glass after half a minute', () => {
    const { mean } = good(drainingFilm(film.height_m, 30, film.viscosity_m2_s))
    const volume = good(filmVolume(film.area_cm2, mean))
    expect(Math.abs(volume / film.volume_mL - 1)).toBeLessThan(5e-4)
    expect(Math.abs(good(residueOnGlass(volume, 350)) / film.residue_mg - 1)).toBeLessThan(1e-3)
  })

  it('is about a nanometre when even, and a hundred times that when gathered in rings', () => {
    expect(Math.abs(good(driedThickness(dried.film_um, dried.solids, 1)) / dried.even_nm - 1)).toBeLessThan(
      0.02,
    )
    expect(
      Math.abs(good(driedThickness(dried.film_um, dried.solids, dried.rings_share)) / dried.rings_nm - 1),
    ).toBeLessThan(0.02)
  })

  it.each(reference.viscosity.rows)('knows how thin hot water is: $m2_s at $celsius °C', (row) => {
    expect(Math.abs(good(waterViscosity(row.celsius)) / row.m2_s - 1)).toBeLessThan(0.01)
  })
})

describe('any numbers at all', () => {
  it('get a result or a reason', () => {
    fc.assert(
      fc.property(wild, wild, wild, wild, wild, (a, b, c, d, e) => {
        const results = [
          hardnessFromIons(a, b),
          solidsFromConductivity(a, b),
          driedSolids(a, b),
          bicarbonateOf(a),
          saturation({ pH: a, celsius: b, solids: c, calcium: d, alkalinity: e }),
          residueOnGlass(a, b),
          filmVolume(a, b),
          drainingFilm(a, b, c),
          waterViscosity(a),
          driedThickness(a, b, c),
        ]
        for (const result of results) expect(everyNumberFinite(result)).toBe(true)
        expect(['soft', 'moderately-hard', 'hard', 'very-hard']).toContain(hardnessClass(a))
      }),
      { numRuns: 1000 },
    )
  })
})
