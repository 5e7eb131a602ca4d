import { describe, expect, it } from 'vitest'
import type { Machine, Product, Pump, Visit } from '#core/records/index'
import { entry } from '#core/units/entry'
import { computeWorksheet } from '#core/worksheet/compute'
import table from '../../references/scenarios.json'
import { caught, cylinder, machine, product, pump, run, site, visit, work } from '../../support/make-site'
import { good } from '../../support/outcomes'

interface Feed {
  readonly q: number
  readonly t: number
  readonly price: number
  readonly size: number
  readonly rho?: number
  readonly cstar?: number
  readonly trade?: number
}

type Scenario = (typeof table.scenarios)[number] & {
  readonly ra: Feed
  readonly det: Feed
  readonly san?: Feed
  readonly V: number | null
}

/** Four significant digits, as the reference states them. */
const four = (value: number): string => value.toPrecision(4)

const glass = cylinder({
  capacity: entry('500', 'mL'),
  graduation: entry('5', 'mL'),
  tolerance: entry('4', 'mL'),
})

/** A site as the scenario says, with one closed series of three runs per pump that caught exactly its flow. */
function play(scenario: Scenario): { use: ReturnType<typeof computeWorksheet> } {
  const products: Product[] = []
  const feed = (role: Product['role'], of: Feed, feeds: Pump['feeds'], charge: boolean): Pump => {
    const size = entry(String(of.size), 'L')
    const made = product({
      role,
      density: of.rho === undefined ? entry('1', 'g/mL') : entry(String(of.rho), 'g/mL'),
      strength:
        of.trade === undefined
          ? { kind: 'none' }
          : { kind: 'trade-percent', percent: String(of.trade), measuredOn: '2026-03-01' },
      containerSize: size,
      prices: [
        { from: '2026-01-01', currency: 'EUR', price: String(of.price * of.size), containerSize: size },
      ],
    })
    products.push(made)
    const target = charge && scenario.V !== null ? (of.cstar ?? 0) * scenario.V : 0
    return pump({
      role,
      productId: made.id,
      feeds,
      doseSeconds: entry(String(of.t), 's'),
      initialChargeSeconds:
        target > 0 ? entry(((60 * target) / ((of.rho ?? 1) * of.q)).toFixed(12), 's') : null,
    })
  }
  const pumps = [
    feed('rinse-aid', scenario.ra, 'final-rinse', false),
    feed('detergent', scenario.det, 'wash-tank', true),
    ...(scenario.san === undefined ? [] : [feed('sanitizer', scenario.san, 'final-rinse', false)]),
  ]
  const flows = [scenario.ra.q, scenario.det.q, ...(scenario.san === undefined ? [] : [scenario.san.q])]
  const kitchen: Machine = machine({
    wash:
      scenario.V === null
        ? { kind: 'dump-and-refill', heel: entry('0.6', 'L'), fill: null }
        : {
            kind: 'tank',
            volume: entry(String(scenario.V), 'L'),
            drainAndFillsPerDay: String(scenario.charges),
            closure: 'continuous',
            carriedOut: null,
            upstream: null,
            feeding: 'with-rinse',
          },
    rinse: { kind: 'measured', perRack: entry(String(scenario.r), 'L'), spread: '0' },
    racksPerDay: String(scenario.racks),
    pumps,
  })
  const tested: Visit = visit({
    work: pumps.map((one, index) =>
      work(one.id, [
        caught(
          [1, 2, 3].map(() => run(entry(String(flows[index]), 'mL'))),
          { instrumentId: glass.id },
        ),
      ]),
    ),
  })
  const place = site({
    calendar: { daysPerWeek: String(scenario.days), closures: [], seasons: [], growthPercentPerYear: null },
    machines: [kitchen],
    visits: [tested],
  })
  return {
    use: computeWorksheet({
      site: place,
      products,
      instruments: [glass],
      settings: null,
      asOf: '2026-03-10',
    }),
  }
}

describe('the five invented sites, from caught runs to the month’s bill, to four significant digits', () => {
  const worked = (table.scenarios as readonly Scenario[]).filter((one) => 'result' in one)

  it('there are five', () => {
    expect(worked.map((one) => one.id)).toEqual(['S01', 'S02', 'S03', 'S06', 'S09'])
  })

  it.each(worked.map((one) => [one.id, one] as const))('%s', (_, scenario) => {
    const result = scenario.result as unknown as Readonly<Record<string, number>>
    const { use: worksheet } = play(scenario)
    const [rinse, detergent, sanitizer] = worksheet.visits[0]?.pumps ?? []
    const [rinseUse, detergentUse, sanitizerUse] = worksheet.use
    const litres = (one: typeof rinseUse): string =>
      four(one === undefined ? 0 : good(one.litresPerMonth).value)
    const dose = (one: typeof rinse): string =>
      four(one?.asLeft === null || one === undefined ? 0 : good(one.asLeft.dose).value)
    const strength = (one: typeof rinse, unit: string): string => {
      const found = one?.asLeft?.strengths.find((s) => s.ok && s.value.unit === unit)
      return four(found?.ok === true ? found.value.value : Number.NaN)
    }
    expect(four(good(worksheet.totals.racksPerMonth))).toBe(four(result['racks_month'] ?? 0))
    expect(dose(rinse)).toBe(four(result['ra_mL'] ?? 0))
    expect(strength(rinse, 'ppm-vv')).toBe(four(result['ra_ppm'] ?? 0))
    expect(litres(rinseUse)).toBe(four(result['ra_L'] ?? 0))
    expect(dose(detergent)).toBe(four(result['det_mL'] ?? 0))
    expect(strength(detergent, 'g/L-product')).toBe(four(result['det_css'] ?? 0))
    expect(litres(detergentUse)).toBe(four(result['det_L'] ?? 0))
    if (result['san_mL'] !== undefined) {
      expect(dose(sanitizer)).toBe(four(result['san_mL']))
      expect(strength(sanitizer, 'mg/L-active')).toBe(four(result['san_mgL'] ?? 0))
      expect(litres(sanitizerUse)).toBe(four(result['san_L'] ?? 0))
    }
    // Money is printed to the cent, a rack to a thousandth of one: the reference is unrounded.
    expect(
      Math.abs(good(worksheet.totals.costPerMonth).toNumber() - (result['cost_month'] ?? 0)),
    ).toBeLessThan(0.02)
    expect(four(good(worksheet.totals.costPerRack).toNumber())).toBe(four(result['cost_rack'] ?? 0))
  })
})
