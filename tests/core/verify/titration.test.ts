import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  alkalinityFromAcid,
  alkalinitySpecies,
  caCO3PerMillilitre,
  chlorineFromThiosulfate,
  hardnessFromTitrant,
  lowAlkalinity,
} from '#core/verify/titration'
import reference from '../../references/water.json'
import { everyNumberFinite, good, wild } from '../tank/support'

interface Row {
  readonly [name: string]: number | string | undefined
}
const rows = (id: string): readonly Row[] =>
  (reference.entries.find((entry) => entry.id === id)?.examples ?? []) as readonly Row[]
const number = (row: Row, name: string): number => Number(row[name] ?? NaN)

// tests/references/water.json: Standard Methods 2320 B, 2340 C, 4500-Cl B, with where each row was read
describe('titrations as Standard Methods work them out', () => {
  it.each(rows('alkalinity_2320B'))('alkalinity: $A_mL mL of $N N acid in $sample_mL mL', (row) => {
    const found = good(alkalinityFromAcid(number(row, 'A_mL'), number(row, 'N'), number(row, 'sample_mL')))
    expect(found).toBeCloseTo(number(row, 'mg_L'), 9)
  })

  it.each(rows('hardness_2340C'))('hardness: $A_mL mL of titrant in $sample_mL mL', (row) => {
    const molar = number(row, 'EDTA_M')
    const perMl = Number.isNaN(molar) ? number(row, 'B') : caCO3PerMillilitre(molar)
    const found = good(hardnessFromTitrant(number(row, 'A_mL'), perMl, number(row, 'sample_mL')))
    // the rows are printed to one place, the last one cut rather than rounded (570.46 as 570.4)
    expect(Math.abs(found - number(row, 'mg_L'))).toBeLessThan(0.1)
  })

  it.each(rows('chlorine_4500B'))('chlorine: $A_mL mL of $N N in $sample_mL mL, blank $B_mL', (row) => {
    // the table gives B with the sign it is added with; a titrated blank subtracts
    const blank = -number(row, 'B_mL')
    const found = good(
      chlorineFromThiosulfate(number(row, 'A_mL'), number(row, 'N'), number(row, 'sample_mL'), blank),
    )
    const exact = row['mg_L'] ?? row['with_35450']
    expect(found).toBeCloseTo(Number(exact), 3)
    if (row['published_mg_L'] !== undefined)
      expect(Math.abs(found - number(row, 'published_mg_L'))).toBeLessThan(number(row, 'tolerance'))
  })

  it('takes the second point of a low alkalinity off: (2 B - C) N 50 000 / sample', () => {
    expect(good(lowAlkalinity(1.2, 1.4, 0.02, 200))).toBeCloseTo(5, 12)
    expect(lowAlkalinity(1, 3, 0.02, 200).ok).toBe(false)
  })

  // the species table of 2320 B, row by row
  it.each([
    ['P = 0: all bicarbonate', 0, 100, [0, 0, 100]],
    ['P below M/2', 20, 100, [0, 40, 60]],
    ['P = M/2: all carbonate', 50, 100, [0, 100, 0]],
    ['P above M/2', 70, 100, [40, 60, 0]],
    ['P = M: all hydroxide', 100, 100, [100, 0, 0]],
  ] as const)('%s', (_, P, M, [hydroxide, carbonate, bicarbonate]) => {
    expect(good(alkalinitySpecies(P, M))).toEqual({ hydroxide, carbonate, bicarbonate })
  })

  it('splits an alkalinity into parts that add up to it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (M, share) => {
          const { hydroxide, carbonate, bicarbonate } = good(alkalinitySpecies(M * share, M))
          expect(hydroxide + carbonate + bicarbonate).toBeCloseTo(M, 8)
          expect(Math.min(hydroxide, carbonate, bicarbonate)).toBeGreaterThanOrEqual(0)
        },
      ),
    )
  })

  it('answers any numbers at all with a result or a reason', () => {
    fc.assert(
      fc.property(wild, wild, wild, wild, (a, b, c, d) => {
        for (const result of [
          alkalinityFromAcid(a, b, c),
          lowAlkalinity(a, b, c, d),
          hardnessFromTitrant(a, b, c),
          caCO3PerMillilitre(a),
          chlorineFromThiosulfate(a, b, c, d),
          alkalinitySpecies(a, b),
        ])
          expect(everyNumberFinite(result)).toBe(true)
      }),
      { numRuns: 1000 },
    )
  })
})
