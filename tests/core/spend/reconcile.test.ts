import { describe, expect, it } from 'vitest'
import { ok } from '#core/outcome'
import { countsOf, deliveredBetween } from '#core/spend/counts'
import { reconcile, type ReconcileInput } from '#core/spend/reconcile'
import { siteSpend } from '#core/spend/site-spend'
import { stocked } from '#core/spend/stock'
import type { PumpDose } from '#core/spend/types'
import { estimate } from '#core/statistics/make-estimate'
import { Decimal } from '#core/units/decimal'
import { aMachine, aMovement, aProduct, aPump, aSetting, aSite, good, id } from './build'

const product = aProduct({
  density: { value: '1.1', unit: 'g/mL' },
  prices: [
    { from: '2026-01-01', currency: 'EUR', price: '60.00', containerSize: { value: '10', unit: 'L' } },
  ],
  leadTimeDays: '4',
})

describe('a stock count', () => {
  it('is full containers and the level of the one in use, read to 5 % of a container', () => {
    const level = good(stocked(aMovement({ fullContainers: '2', part: { value: '4', unit: 'L' } }), product))
    expect(level.litres.toString()).toBe('24')
    // half-width 0.5 L, rectangular: 0.5/sqrt(3) (GUM 4.3.7)
    expect(level.standard).toBeCloseTo(0.288675, 6)
  })

  it('takes a weighed container less its tare over the density: (5.0 - 0.6) kg / 1.1 = 4 L', () => {
    const weighed = aMovement({
      fullContainers: '2',
      part: { value: '5.0', unit: 'kg' },
      tare: { value: '600', unit: 'g' },
    })
    const level = good(stocked(weighed, product))
    expect(level.litres.toNumber()).toBeCloseTo(24, 12)
    expect(level.standard).toBeCloseTo(0.0577, 4)
  })

  it('that leaves the container in use open is doubtful by a whole container', () => {
    const level = good(stocked(aMovement({ fullContainers: '2' }), product))
    expect(level).toMatchObject({ partUnknown: true })
    expect(level.standard).toBeCloseTo(5.7735, 4)
  })

  it.each([
    [{ part: { value: '5', unit: 'kg' } as const }, 'number-missing'],
    [
      { part: { value: '0.5', unit: 'kg' } as const, tare: { value: '0.6', unit: 'kg' } as const },
      'number-out-of-range',
    ],
    [{ part: { value: '140', unit: 'L' } as const }, 'number-out-of-range'],
    [{ fullContainers: '-1' }, 'number-out-of-range'],
    [{ fullContainers: 'two' }, 'number-unreadable'],
    [{ containerSize: { value: '0', unit: 'L' } as const }, 'number-out-of-range'],
  ])('with %j is refused (%s)', (over, code) => {
    expect(stocked(aMovement(over), product)).toMatchObject({ ok: false, problem: { code } })
  })

  it('made again on the same day holds instead of the first', () => {
    const counts = countsOf(
      [
        aMovement({ fullContainers: '1', part: { value: '2', unit: 'L' } }),
        aMovement({ fullContainers: '2', part: { value: '3', unit: 'L' } }),
      ],
      product,
    )
    expect(counts.map((one) => good(one.level).litres.toString())).toEqual(['23'])
  })

  it('may hold what is in the containers of two machines, together', () => {
    expect(good(stocked(aMovement({ part: { value: '14', unit: 'L' } }), product)).litres.toString()).toBe(
      '14',
    )
  })

  it('and the deliveries of its own day go by the order they were booked in', () => {
    const movements = [
      aMovement({ on: '2026-03-01', kind: 'delivery', fullContainers: '7' }),
      aMovement({ on: '2026-03-01', fullContainers: '8', part: { value: '0', unit: 'L' } }),
      aMovement({ on: '2026-03-01', kind: 'delivery', fullContainers: '1' }),
      aMovement({ on: '2026-03-20', kind: 'delivery', fullContainers: '2' }),
      aMovement({ on: '2026-03-31', fullContainers: '5', part: { value: '0', unit: 'L' } }),
      aMovement({ on: '2026-03-31', kind: 'delivery', fullContainers: '9' }),
    ]
    const [opening, closing] = countsOf(movements, product)
    if (opening === undefined || closing === undefined) throw new Error('two counts expected')
    expect(good(deliveredBetween(movements, product, opening, closing)).toString()).toBe('30')
  })
})

const level = (litres: number, standard = 0.3) =>
  ok({ litres: new Decimal(litres), standard, partUnknown: false })
const theory = (litres: number, standard: number) => estimate(litres, 'L', [{ source: 'racks', standard }])
const reconciled = (over: Partial<ReconcileInput> = {}) =>
  reconcile({
    product,
    from: '2026-01-01',
    to: '2026-02-01',
    opening: level(24),
    closing: level(14),
    delivered: ok(new Decimal(30)),
    theory: theory(40, 1),
    drift: null,
    counted: true,
    container: 10,
    ...over,
  })

/** Hand-worked: actual = opening + deliveries - closing; z = variance over the root of the sum of squares. */
describe('stock against theory', () => {
  it('24 + 30 - 14 = 40 L used, as the pumps should have: within what counting can tell', () => {
    const result = reconciled()
    expect(good(result.actual).value).toBeCloseTo(40, 12)
    expect(good(result.actual).standard).toBeCloseTo(Math.hypot(0.3, 0.3), 12)
    expect(result).toMatchObject({ z: 0, reasons: [], next: 'none' })
    expect(good(result.verdict)).toBe('agrees')
  })

  it('46 L used against 40 ± 1 (standard): z = 6 / sqrt(0.3² + 0.3² + 1²) = 5.52', () => {
    const result = reconciled({ closing: level(8) })
    expect(result.z).toBeCloseTo(6 / Math.sqrt(0.09 + 0.09 + 1), 9)
    expect(result.relative).toBeCloseTo(0.15, 12)
    expect(good(result.verdict)).toBe('used-more')
  })

  it('says agrees just below two standard uncertainties, and not just above', () => {
    const sure = Math.sqrt(0.09 + 0.09 + 1)
    expect(good(reconciled({ theory: theory(40 - 1.99 * sure, 1) }).verdict)).toBe('agrees')
    expect(good(reconciled({ theory: theory(40 - 2.01 * sure, 1) }).verdict)).toBe('used-more')
    expect(good(reconciled({ theory: theory(40 + 2.01 * sure, 1) }).verdict)).toBe('used-less')
  })

  it('without a test at the end asks for the as-found test first: it splits pump from racks', () => {
    const result = reconciled({ closing: level(8) })
    expect(result.next).toBe('as-found-test')
    // racks were counted, so racks come last and the pump first
    expect(result.reasons[0]).toBe('pump-drifted-up')
    expect(result.reasons.at(-1)).toBe('more-racks')
  })

  it('puts racks first when they were only stated, and asks for the counter once the pump is cleared', () => {
    const drift = { value: 0.005, standard: 0.01 }
    const result = reconciled({ closing: level(8), counted: false, drift })
    expect(result.reasons[0]).toBe('more-racks')
    expect(result.reasons.at(-1)).toBe('pump-drifted-up')
    expect(result.next).toBe('read-rack-counter')
    expect(result.findings.map((finding) => finding.code)).toContain('racks-stated-only')
  })

  it('lays 15 % more at the door of a pump found 14 % up', () => {
    const result = reconciled({ closing: level(8), drift: { value: 0.14, standard: 0.01 } })
    expect(result.findings).toContainEqual({ code: 'pump-explains', drift: 0.14 })
    expect(result.reasons[0]).toBe('pump-drifted-up')
    expect(result.next).toBe('repair-pump')
  })

  it('lays 10 % less at the door of a pump that wore to 18 % below over the time', () => {
    const result = reconciled({
      closing: level(18),
      drift: { value: -0.18, standard: 0.01 },
    })
    expect(result.relative).toBeCloseTo(-0.1, 12)
    expect(result.reasons[0]).toBe('pump-worn-or-air')
  })

  it('does not blame a pump that moved the other way', () => {
    const result = reconciled({ closing: level(8), drift: { value: -0.15, standard: 0.01 } })
    expect(result.findings.map((finding) => finding.code)).toContain('pump-does-not-explain')
    expect(result.reasons.at(-1)).toBe('pump-drifted-up')
  })

  it('takes a negative use for a booking error, whatever the pumps say', () => {
    const result = reconciled({ closing: level(60) })
    expect(result.findings.map((finding) => finding.code)).toContain('booking-error')
    expect(result.next).toBe('check-bookings')
  })

  it('warns where less than two containers were emptied', () => {
    const result = reconciled({
      delivered: ok(new Decimal(0)),
      theory: theory(10, 0.3),
    })
    expect(result.findings).toContainEqual({ code: 'too-coarse', containers: 1 })
  })

  it('says what is missing instead of a verdict', () => {
    const result = reconciled({ theory: { ok: false, problem: { code: 'no-runs' } } })
    expect(result.verdict).toMatchObject({ ok: false, problem: { code: 'no-runs' } })
    expect(result).toMatchObject({ z: null, reasons: [] })
    expect(good(result.actual).value).toBeCloseTo(40, 12)
  })
})

describe('a whole site', () => {
  const setting = aSetting(id(11), 30, 2)
  const dose = (on: string): PumpDose => ({
    visitId: id(90),
    pumpId: id(11),
    on,
    found: setting.dose,
    left: setting.dose,
    flowLeft: setting.flow,
    changed: false,
    sameInstrument: true,
  })
  const site = aSite({
    machines: [aMachine({ racksPerDay: '100', racksSpread: '3', pumps: [aPump()] })],
    stock: [
      aMovement({ on: '2026-03-01', fullContainers: '2', part: { value: '5', unit: 'L' } }),
      aMovement({ on: '2026-03-11', kind: 'delivery', fullContainers: '1' }),
      aMovement({ on: '2026-03-31', fullContainers: '3', part: { value: '2', unit: 'L' } }),
    ],
  })
  const spend = siteSpend({
    site,
    products: [product],
    asOf: '2026-04-10',
    serviceLevel: '95',
    doses: [dose('2026-02-15')],
  })

  it('reconciles count by count: 100 racks x 1 mL x 30 days = 3 L; 25 + 10 - 32 = 3 L', () => {
    const [one] = spend.products[0]?.reconciliations ?? []
    expect(good(one?.theory).value).toBeCloseTo(3, 9)
    expect(good(one?.actual).value).toBeCloseTo(3, 9)
    expect(good(one?.verdict)).toBe('agrees')
  })

  it('knows today’s shelf: the last count less what the pumps used since: 32 - 1 = 31 L', () => {
    expect(good(spend.products[0]?.stock).value).toBeCloseTo(31, 9)
  })

  it('without a count says so and advises no order', () => {
    const bare = siteSpend({
      site: { ...site, stock: [] },
      products: [product],
      asOf: '2026-04-10',
      serviceLevel: '95',
      doses: [dose('2026-02-15')],
    })
    expect(bare.products[0]?.stock).toMatchObject({ problem: { needed: 'stock-count' } })
    expect(bare.products[0]?.reorder).toMatchObject({ problem: { needed: 'stock-count' } })
  })
})
