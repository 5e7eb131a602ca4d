import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fail, ok } from '#core/outcome'
import type { Instrument, Verification, VerificationMethod, Water } from '#core/records/index'
import { estimate, exactly } from '#core/statistics/make-estimate'
import { compareStrengths } from '#core/verify/agreement'
import { speaksAgainst } from '#core/verify/distrust'
import { DISTRUST_WORDS } from '#core/verify/distrust-words'
import { measuredStrength } from '#core/verify/measured-strength'
import type { Distrust } from '#core/verify/types'
import { verificationResult, type VerificationInput } from '#core/verify/verification-result'
import { product } from '../sanitize/records'
import { everyNumberFinite, good } from '../tank/support'

const check = (changes: Partial<Verification>): Verification => ({
  id: 'v1',
  at: '2026-03-31T10:00:00.000Z',
  method: 'strip',
  where: 'rinse-water',
  instrumentId: null,
  reading: '50',
  step: '25',
  factor: null,
  blank: null,
  ...changes,
})

const kit: Instrument = {
  id: 'k1',
  name: 'Drop kit',
  kind: 'titration-kit',
  capacity: null,
  graduation: null,
  tolerance: { value: '3', unit: 'percent' },
  bore: null,
  checkedOn: null,
}

const water: Water = {
  hardness: { value: '10', unit: 'deg-dH' },
  solids: null,
  conductivity: null,
  alkalinity: null,
  calcium: null,
  pH: null,
  temperature: null,
  softener: 'none',
}

const chlorine = (value: number, standard: number, source: 'flow' | 'rinse-volume' = 'flow') =>
  estimate(value, 'mg/L-active', [{ source, standard }])

const input = (changes: Partial<VerificationInput> = {}): VerificationInput => ({
  pump: { feeds: 'final-rinse' },
  product: product('bleach', {
    deliveredOn: '2026-03-28',
    strength: { kind: 'trade-percent', percent: '9.5', measuredOn: null },
  }),
  instruments: [],
  predictions: {
    strengths: [exactly(220, 'ppm-vv'), chlorine(53.2, 2)],
    settlesAt: estimate(2, 'g/L-product', [{ source: 'flow', standard: 0.06 }]),
    water,
  },
  racksSinceFill: 60,
  racksBeforeTest: 40,
  before: null,
  ...changes,
})

const tank = (changes: Partial<VerificationInput> = {}): VerificationInput =>
  input({ pump: { feeds: 'wash-tank' }, ...changes })

describe('what a check measured', () => {
  // rectangle of half a pad: JCGM 100 4.3.7
  it('is a pad of the strip, half a step either way', () => {
    const found = good(measuredStrength(check({}), null))
    expect(found).toMatchObject({ value: 50, unit: 'mg/L-active' })
    expect(found.standard).toBeCloseTo(12.5 / Math.sqrt(3), 12)
    expect(found.budget.map((line) => line.source)).toEqual(['step-width'])
  })

  it('is mL times the factor of the kit, less the blank, with the doubt of both readings and of the kit', () => {
    const titration = check({
      method: 'chlorine-titration',
      reading: '5.4',
      blank: '0.2',
      step: '0.1',
      factor: '10',
    })
    const found = good(measuredStrength(titration, null))
    expect(found.value).toBeCloseTo(52, 12)
    const readings = (10 * 0.05 * Math.SQRT2) / Math.sqrt(3)
    expect(found.standard).toBeCloseTo(Math.hypot(readings, (52 * 0.02) / Math.sqrt(3)), 12)
  })

  it('is drops times the factor, a whole drop either way, and the kit’s own tolerance where it states one', () => {
    const drops = check({
      method: 'alkalinity-drops',
      where: 'wash-tank',
      reading: '8',
      step: null,
      factor: '0.25',
    })
    const found = good(measuredStrength(drops, kit))
    expect(found).toMatchObject({ value: 2, unit: 'g/L-product' })
    expect(found.standard).toBeCloseTo(Math.hypot(0.25 / Math.sqrt(3), (2 * 0.03) / Math.sqrt(3)), 12)
  })

  it('is conductivity above the plain water over what one g/L adds', () => {
    const found = good(
      measuredStrength(
        check({
          method: 'conductivity',
          where: 'wash-tank',
          reading: '2200',
          blank: '400',
          factor: '900',
          step: '10',
        }),
        null,
      ),
    )
    expect(found.value).toBeCloseTo(2, 12)
    expect(found.unit).toBe('g/L-product')
  })

  it('takes the step from the instrument when the check states none', () => {
    const titration = check({ method: 'hardness-titration', reading: '12.5', step: null, factor: '20' })
    const burette = { ...kit, graduation: { value: '0.1', unit: 'mL' as const } }
    expect(measuredStrength(titration, burette).ok).toBe(true)
    expect(measuredStrength(titration, null)).toMatchObject({
      ok: false,
      problem: { code: 'missing', field: 'verification.step', needed: 'graduation' },
    })
  })

  it.each([
    ['no reading', { reading: null }, 'verification.reading'],
    ['no factor', { method: 'chlorine-drops', factor: null }, 'verification.factor'],
    ['a factor of nothing', { method: 'chlorine-drops', factor: '0' }, 'verification.factor'],
    [
      'a blank above the reading',
      { method: 'chlorine-drops', reading: '2', factor: '10', blank: '3' },
      'verification.blank',
    ],
  ] as const)('names the field for %s', (_, change, field) => {
    expect(measuredStrength(check(change), null)).toMatchObject({ ok: false, problem: { field } })
  })
})

const apart = (m: number, u: number, p: number, v: number) =>
  good(compareStrengths(good(chlorine(m, u)), good(chlorine(p, v))))

describe('reading against prediction', () => {
  it('agree when their difference is below two of its standard uncertainties', () => {
    // 10 apart with 3 and 4: u = 5, z = 2
    expect(apart(60, 3, 50, 4)).toMatchObject({ z: 2, agrees: false })
    expect(apart(59.9, 3, 50, 4).agrees).toBe(true)
    expect(apart(50, 0, 50, 0)).toMatchObject({ z: 0, agrees: true })
  })

  it('cannot be judged when both are said to be exact and differ', () => {
    expect(
      compareStrengths(good(exactly(50, 'mg/L-active')), good(exactly(51, 'mg/L-active'))),
    ).toMatchObject({
      ok: false,
      problem: { reason: 'no-scatter' },
    })
  })

  it('a 50 strip agrees with 53 mg/L predicted', () => {
    const found = verificationResult(check({}), input())
    expect(good(found.agreement)).toMatchObject({ agrees: true, distrust: null })
  })

  it('hardness is held against the recorded hardness in one unit', () => {
    const found = verificationResult(
      check({ method: 'hardness-drops', reading: '9', factor: '20', step: null }),
      input(),
    )
    // 10 °dH are 178.48 mg/L; 9 drops of 20 are 180
    expect(good(found.predicted).value).toBeCloseTo(178.48, 1)
    expect(good(found.agreement).agrees).toBe(true)
  })

  it('does not predict chlorine in a wash tank, where soil takes it all', () => {
    // Army laboratory report TR 73-41-CE: active chlorine in the wash disappeared entirely
    const found = verificationResult(check({ where: 'wash-tank' }), tank())
    expect(found.predicted).toMatchObject({ ok: false, problem: { reason: 'not-predicted' } })
    expect(found.measured.ok).toBe(true)
  })

  it('says that the pump was not tested rather than predict nothing', () => {
    const untested = input({
      predictions: { ...input().predictions, strengths: [] },
    })
    expect(verificationResult(check({}), untested).predicted).toMatchObject({
      ok: false,
      problem: { code: 'no-runs' },
    })
  })
})

const reason = (changes: Partial<Verification>, around: VerificationInput): Distrust | null =>
  good(verificationResult(check(changes), around).agreement).distrust

const titrated = { method: 'alkalinity-titration', where: 'wash-tank', step: '0.1', factor: '0.2' } as const
const drops = { method: 'chlorine-drops', step: null, factor: '5' } as const

describe('which to distrust when they differ', () => {
  it('neither, while the tank has not washed enough racks', () => {
    expect(reason({ ...titrated, reading: '13' }, tank({ racksSinceFill: 5 }))).toBe('tank-not-settled')
    expect(speaksAgainst('tank-not-settled')).toBe('neither')
  })

  it('neither, while the rinse reads between the dose before the change and the one after it', () => {
    // dose raised from 30 to 53.2 mg/L: 8 drops of 5 are 40, on the way up
    const raised = input({ before: [exactly(220, 'ppm-vv'), chlorine(30, 1)] })
    expect(reason({ ...drops, reading: '8' }, raised)).toBe('booster-not-through')
    expect(speaksAgainst('booster-not-through')).toBe('neither')
    // lowered: a reading below the new dose is not water from before
    const lowered = input({ before: [exactly(220, 'ppm-vv'), chlorine(80, 1)] })
    expect(reason({ ...drops, reading: '8' }, lowered)).not.toBe('booster-not-through')
    // far below both: the booster does not explain it
    expect(reason({ ...drops, reading: '2' }, raised)).not.toBe('booster-not-through')
  })

  it('a reading taken on ware, which reads low', () => {
    expect(reason({ ...drops, where: 'ware', reading: '5' }, input())).toBe('read-on-ware')
  })

  it('a strip that would agree with one pad more', () => {
    expect(reason({ reading: '25', step: '25' }, input())).toBe('strip-between-pads')
  })

  it('the record of a product that is old, or undated', () => {
    const old = product('bleach', {
      deliveredOn: '2026-01-01',
      strength: { kind: 'trade-percent', percent: '9.5', measuredOn: null },
    })
    expect(reason({ ...drops, reading: '6' }, input({ product: old }))).toBe('product-aged')
    const undated = product('bleach', {
      strength: { kind: 'trade-percent', percent: '9.5', measuredOn: null },
    })
    expect(reason({ ...drops, reading: '6' }, input({ product: undated }))).toBe('product-aged')
  })

  it('the hardness on record, whatever else is known of the pump and its product', () => {
    const undated = product('bleach', {
      strength: { kind: 'trade-percent', percent: '9.5', measuredOn: null },
    })
    const hard = { method: 'hardness-drops', factor: '20', step: null } as const
    for (const where of ['rinse-water', 'ware', 'wash-tank'] as const)
      for (const reading of ['3', '20'])
        expect(reason({ ...hard, where, reading }, input({ product: undated }))).toBe('hardness-changed')
    expect(speaksAgainst('hardness-changed')).toBe('prediction')
    expect(DISTRUST_WORDS['hardness-changed']).not.toMatch(/strength|dose|runs/u)
  })

  it('not the chlorine on record, when a tank is low in product: that record has no part in g per litre', () => {
    const chlorinated = product('chlorinated detergent', {
      strength: { kind: 'weight-percent', percent: '2', active: 'available-chlorine', measuredOn: null },
    })
    expect(reason({ ...titrated, reading: '7' }, tank({ product: chlorinated }))).toBe('soil-or-leak')
  })

  it('an alkalinity that counts the water’s own, when no blank was titrated', () => {
    expect(reason({ ...titrated, reading: '13' }, tank())).toBe('water-not-subtracted')
    expect(reason({ ...titrated, reading: '14', blank: '1' }, tank())).not.toBe('water-not-subtracted')
  })

  it('the prediction, when a tank reads low: soil, or water nobody counted', () => {
    expect(reason({ ...titrated, reading: '7' }, tank())).toBe('soil-or-leak')
    expect(speaksAgainst('soil-or-leak')).toBe('prediction')
  })

  it('the rinse water, when most of the prediction’s doubt is its', () => {
    const around = input({
      predictions: { ...input().predictions, strengths: [chlorine(53.2, 3, 'rinse-volume')] },
    })
    expect(reason({ ...drops, reading: '15' }, around)).toBe('rinse-volume-unsure')
  })

  it('the less certain of the two, when nothing else explains it', () => {
    expect(reason({ ...drops, reading: '15' }, input())).toBe('reading-less-certain')
    const rough = input({
      predictions: { ...input().predictions, strengths: [chlorine(53.2, 8)] },
    })
    const fine = { method: 'chlorine-titration', reading: '15', step: '0.01', factor: '5' } as const
    expect(reason(fine, rough)).toBe('prediction-less-certain')
  })

  it('is told in words that name the side and a next step', () => {
    for (const [distrust, words] of Object.entries(DISTRUST_WORDS)) {
      const side = speaksAgainst(distrust as Distrust)
      expect(words).toMatch(side === 'neither' ? /^Neither/ : /^Doubt the/)
      expect(words.split('. ').length).toBeGreaterThan(1)
    }
  })
})

describe('any check at all', () => {
  const methods: readonly VerificationMethod[] = [
    'strip',
    'chlorine-titration',
    'chlorine-drops',
    'alkalinity-titration',
    'alkalinity-drops',
    'hardness-titration',
    'hardness-drops',
    'conductivity',
  ]
  const text = fc.oneof(
    fc.constant(null),
    fc.string({ maxLength: 6 }),
    fc.double({ noNaN: true }).map(String),
    fc.integer({ min: -100, max: 100_000 }).map(String),
  )

  it('gives a result or a reason, never a number that cannot be shown', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...methods),
        fc.constantFrom('rinse-water', 'ware', 'wash-tank'),
        fc.constantFrom('final-rinse', 'wash-tank'),
        text,
        text,
        text,
        text,
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        (method, where, feeds, reading, step, factor, blank, predicted) => {
          const around = input({
            pump: { feeds },
            predictions: {
              water,
              strengths: [chlorine(predicted, predicted / 20)],
              settlesAt:
                predicted > 500 ? fail({ code: 'no-runs' }) : ok(good(exactly(predicted, 'g/L-product'))),
            },
          })
          const found = verificationResult(check({ method, where, reading, step, factor, blank }), around)
          expect(everyNumberFinite(found)).toBe(true)
        },
      ),
      { numRuns: 1000 },
    )
  })
})
