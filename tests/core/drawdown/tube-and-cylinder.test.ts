import { describe, expect, it } from 'vitest'
import { CYLINDER_TOLERANCES, cylinderTolerance } from '#core/drawdown/cylinder-tolerances'
import { instrumentLimits } from '#core/drawdown/instrument-limits'
import { boreFromScale, tubeFactor, tubeFactorOf } from '#core/drawdown/tube-factor'
import { cylinder, g, mL, mm, scale } from '#tests/core/drawdown/records'
import { codeOf, good } from '#tests/support/outcomes'
import worked from '../../references/drawdown.json'
import volumetric from '../../references/volumetric.json'

describe('immersed tube', () => {
  // Largest bores of ASTM E1272 Table 1, mm; rebuilt from the worked factors, which give whole tenths of a millimetre.
  const bores = { '10 mL': 15.2, '25 mL': 18.5, '50 mL': 23, '100 mL': 29.6, '250 mL': 42.4, '500 mL': 50.8 }

  it.each(Object.entries(worked.tube_correction))(
    'a 6.35 mm tube in a %s cylinder leaves %d of what is read',
    (size, k) => {
      const bore = bores[size as keyof typeof bores]
      expect(good(tubeFactor(mm('6.35'), mm(bore))).factor).toBeCloseTo(k, 12)
    },
  )

  it('is less well known in a narrow cylinder than in a wide one', () => {
    expect(good(tubeFactorOf(6.35, 15)).standard).toBeGreaterThan(good(tubeFactorOf(6.35, 50)).standard)
  })

  it('cannot be as wide as the cylinder', () => {
    expect(codeOf(tubeFactorOf(23, 23))).toBe('tube-wider-than-cylinder')
    expect(codeOf(tubeFactorOf(Number.NaN, 23))).toBe('tube-wider-than-cylinder')
  })

  it('takes the bore from a marked length: 50 mL over 120.34 mm is 23.00 mm', () => {
    expect(boreFromScale(50, 120.34)).toBeCloseTo(23, 2)
    expect(boreFromScale(50, 0)).toBeNull()
  })
})

describe('cylinder tolerances', () => {
  it.each(volumetric.astm_E1272.rows)(
    '$mL mL: +-$A mL class A, +-$B mL class B (ASTM E1272-02(2012) Table 1)',
    (row) => {
      expect(cylinderTolerance(row.mL, 'A')).toBe(row.A)
      expect(cylinderTolerance(row.mL, 'B')).toBe(row.B)
    },
  )

  it('class B is twice class A in every row, as the standard says', () => {
    for (const row of CYLINDER_TOLERANCES) expect(row.B).toBeCloseTo(2 * row.A, 12)
  })

  it('an odd size takes the next larger row, a huge one its share, a nonsense one nothing', () => {
    expect(cylinderTolerance(30, 'A')).toBe(0.25)
    expect(cylinderTolerance(2000, 'A')).toBe(6)
    expect(cylinderTolerance(Number.NaN, 'A')).toBeNull()
  })

  it('a cylinder without a stated tolerance is taken as class B, a cup as 5 %, a scale as one step, and says so', () => {
    expect(good(instrumentLimits(cylinder({ tolerance: null })))).toMatchObject({
      tolerance: 0.5,
      toleranceFrom: 'class-b-assumed',
    })
    expect(
      good(instrumentLimits(cylinder({ kind: 'cup', capacity: mL(200), tolerance: null }))),
    ).toMatchObject({
      tolerance: 10,
      toleranceFrom: 'cup-assumed',
    })
    expect(good(instrumentLimits(scale({ tolerance: null })))).toMatchObject({
      tolerance: 0.1,
      toleranceFrom: 'one-step-assumed',
    })
    expect(codeOf(instrumentLimits(scale({ tolerance: null, graduation: null })))).toBe('missing')
    expect(codeOf(instrumentLimits(cylinder({ tolerance: g(1) })))).toBe('unit-unknown')
  })
})
