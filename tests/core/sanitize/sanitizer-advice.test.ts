import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chlorineRow } from '#core/sanitize/chlorine-row'
import { codeLimits } from '#core/sanitize/code-limits'
import { sanitizerAdvice, type SanitizerReading } from '#core/sanitize/sanitizer-advice'
import { SHIPPED_LIMITS } from '#core/sanitize/code-limit-table'
import { activeOf } from '#core/dose/nominal'
import { onBasis } from '#core/dose/on-basis'
import { requiredDose } from '#core/dose/required-dose'
import { isOutsideLabel } from '#core/sanitize/label-limits'
import { exactly as known } from '#core/statistics/make-estimate'
import { product } from '../../support/make-site'
import { good } from '../../support/outcomes'
import reference from '../../references/food-code.json'
import { everyNumberFinite, wild } from '../tank/support'

const rows = reference.entries.find((entry) => entry.id === 'chlorine_decision_rows')?.rows ?? []
const table = (reference.entries.find((entry) => entry.id === 'chlorine')?.facts ?? []) as readonly Record<
  string,
  number | null
>[]

const exactly = (value: number) => ({ value, low: value, high: value })
const reading = (changes: Partial<SanitizerReading>): SanitizerReading => ({
  substance: 'available-chlorine',
  strength: exactly(75),
  pH: '7.5',
  temperature: { value: '120', unit: 'degF' },
  hardness: null,
  label: { basis: 'mg-per-L-active', low: '50', high: '100' },
  ...changes,
})
const advise = (changes: Partial<SanitizerReading>) => sanitizerAdvice(reading(changes), SHIPPED_LIMITS)

// Food Code 4-501.114(A): tests/references/food-code.json, `chlorine` and `chlorine_decision_rows`
describe('the chlorine table', () => {
  it.each(['low', 'middle', 'high'] as const)('prints its %s step as adopted', (step) => {
    const fact = table[['low', 'middle', 'high'].indexOf(step)] ?? {}
    expect(SHIPPED_LIMITS[`chlorine-${step}-step`].figures[0].value).toBe(fact['mg_per_L_from'])
    for (const pH of ['10', '8'] as const)
      expect(SHIPPED_LIMITS[`chlorine-${step}-temperature-pH-${pH}`].figures.map((f) => f.value)).toEqual([
        fact[`min_F_pH_${pH}_or_less`],
        fact[`min_C_pH_${pH}_or_less`],
      ])
  })

  it.each(rows)(
    '$ppm mg/L at pH $pH asks for $min_temp_F °F',
    ({ ppm, pH, temp_F, min_temp_F, meets_table }) => {
      const row = chlorineRow(ppm, pH, SHIPPED_LIMITS)
      expect(row?.temperature.figures[0].value ?? null).toBe(min_temp_F)
      const advice = advise({
        strength: exactly(ppm),
        pH: String(pH),
        temperature: { value: String(temp_F), unit: 'degF' },
        label: null,
      })
      expect(advice.overall === 'misses').toBe(!meets_table)
    },
  )

  it('puts 49.5 and 99.5 mg/L, which the text leaves out, in the lower row', () => {
    expect(chlorineRow(49.5, 7, SHIPPED_LIMITS)?.step).toBe('low')
    expect(chlorineRow(99.5, 7, SHIPPED_LIMITS)?.step).toBe('middle')
  })

  it('takes the hotter column while the pH is not measured, and says that it is not', () => {
    expect(chlorineRow(60, null, SHIPPED_LIMITS)?.temperature.figures[0].value).toBe(100)
    const advice = advise({ pH: null, temperature: { value: '80', unit: 'degF' } })
    expect(advice.overall).toBe('misses')
    expect(advice.notKnown).toEqual(['pH'])
  })

  it('asks the stronger solution for no hotter water than the weaker one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 300, noNaN: true }),
        fc.double({ min: 25, max: 300, noNaN: true }),
        fc.double({ min: 4, max: 10, noNaN: true }),
        (a, b, pH) => {
          const at = (mg: number) => chlorineRow(mg, pH, SHIPPED_LIMITS)?.temperature.figures[0].value ?? NaN
          expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)))
        },
      ),
    )
  })

  it('follows a step changed in the settings', () => {
    const local = codeLimits({ codeLimits: [{ limit: 'chlorine-low-step', value: '50', source: 'state' }] })
    expect(chlorineRow(40, 7, local)).toBeNull()
  })
})

const quat = (changes: Partial<SanitizerReading>) =>
  advise({
    substance: 'quat',
    strength: exactly(120),
    hardness: { value: '200', unit: 'mg/L-CaCO3' },
    label: { basis: 'mg-per-L-active', low: '100', high: '200' },
    ...changes,
  })

describe('advice on a sanitizing rinse', () => {
  it('meets label and table when all is measured and nothing is near a figure', () => {
    expect(advise({})).toMatchObject({ overall: 'meets', outsideLabel: false, notKnown: [] })
  })

  it('never says "meets" while something is not known', () => {
    expect(advise({ temperature: null })).toMatchObject({ overall: 'cannot-tell', notKnown: ['temperature'] })
    expect(advise({ label: null })).toMatchObject({ overall: 'cannot-tell', notKnown: ['label'] })
  })

  it('cannot tell when the interval of the strength reaches over a figure or a step', () => {
    const near = advise({ strength: { value: 52, low: 48, high: 56 } })
    expect(near).toMatchObject({ overall: 'cannot-tell', stepUnsure: true })
  })

  it('puts the label before the code: 45 mg/L of a product whose label starts at 50 is outside it', () => {
    const weak = advise({ strength: exactly(45) })
    expect(weak.outsideLabel).toBe(true)
    expect(weak.overall).toBe('misses')
    expect(weak.comparisons[0]?.limit.id).toBe('label')
  })

  // 40 CFR 180.940(a), the figure from memory
  it('misses above 200 mg/L of chlorine, whatever the label', () => {
    expect(advise({ strength: exactly(210), label: null }).overall).toBe('misses')
  })

  // Food Code 4-501.114(B)
  it.each([
    [12.5, '5', '68', 'misses-nothing'],
    [12.4, '5', '80', 'misses'],
    [26, '5', '80', 'misses'],
    [20, '5.5', '80', 'misses'],
    [20, '5', '67', 'misses'],
  ] as const)('iodine at %d mg/L, pH %s, %s °F', (mg, pH, degF, expected) => {
    const advice = advise({
      substance: 'iodine',
      strength: exactly(mg),
      pH,
      temperature: { value: degF, unit: 'degF' },
      label: null,
    })
    expect(advice.overall === 'misses').toBe(expected === 'misses')
  })

  // Food Code 4-501.114(C): concentration as on the label, 75 °F, 500 mg/L hardness
  it('leaves the strength of quat to its label, and asks for warm and not too hard water', () => {
    expect(quat({}).overall).toBe('meets')
    expect(quat({ label: null }).overall).toBe('misses')
    expect(quat({ hardness: { value: '30', unit: 'gpg' } }).overall).toBe('misses')
    expect(quat({ hardness: null }).notKnown).toEqual(['hardness'])
    expect(quat({ temperature: { value: '70', unit: 'degF' } }).overall).toBe('misses')
  })

  it('answers any numbers at all, and never calls an unreadable strength good', () => {
    fc.assert(
      fc.property(
        wild,
        wild,
        wild,
        fc.oneof(fc.string(), fc.constant(null)),
        fc.constantFrom<SanitizerReading['substance']>('available-chlorine', 'iodine', 'quat'),
        (value, low, high, pH, substance) => {
          const advice = advise({ substance, strength: { value, low, high }, pH, label: null })
          expect(everyNumberFinite(advice)).toBe(true)
          if (!Number.isFinite(value)) expect(advice.overall).toBe('misses')
        },
      ),
      { numRuns: 500 },
    )
  })
})

describe('a label that speaks in ppm v/v of product', () => {
  const rinse = { kind: 'measured', perRack: { value: '4.467', unit: 'L' }, spread: null } as const
  const label = { basis: 'ppm-vv', low: '500', high: '900' } as const
  const bleach = product({ strength: { kind: 'trade-percent', percent: '10', measuredOn: null } })
  const quat = product({
    density: { value: '1.05', unit: 'g/mL' },
    strength: { kind: 'weight-percent', percent: '10', active: 'quat', measuredOn: null },
  })

  const given = (dose: number) =>
    (['ppm-vv', 'mg-per-L-product', 'mg-per-L-active'] as const).map((basis) =>
      onBasis(basis, good(known(dose, 'mL/rack')), { rinse, product: bleach }),
    )

  it.each([bleach, quat])('counts in mg/L active, as a dose of that ppm gives it', (of) => {
    const context = { rinse, product: of }
    const active = (ppm: number) => good(activeOf(good(requiredDose('ppm-vv', ppm, context)), context))
    // by hand: 10 g active in 100 mL, so about 0.1 mg/L for each ppm, times the density of one by weight
    expect(active(500)).toBeCloseTo(of === bleach ? 50.025 : 52.526, 2)
    const strengths = advise({ label, product: of }).comparisons.filter(({ limit }) => limit.id === 'label')
    expect(strengths.map(({ limit }) => limit.bound)).toEqual(['min', 'max'])
    expect(strengths[0]?.figure.value).toBeCloseTo(active(500), 9)
    expect(strengths[1]?.figure.value).toBeCloseTo(active(900), 9)
  })

  it('stops a strength outside it, and is not known only while the product’s strength is not', () => {
    expect(advise({ label, product: bleach, strength: exactly(45) }).outsideLabel).toBe(true)
    expect(advise({ label, product: bleach, strength: exactly(60) })).toMatchObject({
      outsideLabel: false,
      notKnown: [],
    })
    expect(advise({ label, product: product() }).notKnown).toEqual(['label'])
    expect(advise({ label }).notKnown).toEqual(['label'])
  })

  it('is held against the dose on its own basis, and so are labels in mg/L active', () => {
    // 4.467 L: 2 mL are 447.5 ppm and 44.8 mg/L active, 3 mL 671 ppm and 67.2, 4.5 mL 1006 ppm and 100.7
    expect([2, 3, 4.5].map((dose) => isOutsideLabel(label, given(dose)))).toEqual([true, false, true])
    const inActive = { basis: 'mg-per-L-active', low: '50', high: null } as const
    expect([2, 3, 4.5].map((dose) => isOutsideLabel(inActive, given(dose)))).toEqual([true, false, false])
    expect(isOutsideLabel(null, given(2))).toBe(false)
    expect(isOutsideLabel({ basis: 'g-per-L-tank', low: '1', high: '2' }, given(2))).toBe(false)
    expect(isOutsideLabel(label, [])).toBe(false)
  })
})
