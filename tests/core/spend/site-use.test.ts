import { describe, expect, it } from 'vitest'
import { siteUse } from '#core/spend/site-use'
import reference from '../../references/scenarios.json' with { type: 'json' }
import { good, scenarioSite, type Scenario } from './build'

const fourDigits = (x: number): string => Number(x).toPrecision(4)
/** Source: tests/references/scenarios.json, five invented sites worked by hand and script, to four digits. */
describe.each(reference.scenarios)('$id $site uses and costs a month what the worked example says', (row) => {
  const scenario: Scenario = row
  const { site, products, settings } = scenarioSite(scenario)
  const { use, totals } = siteUse(site, products, settings, '2026-03-01')
  const result = scenario.result

  it('racks a month', () => {
    expect(fourDigits(good(totals.racksPerMonth))).toBe(fourDigits(result.racks_month))
  })

  const lines = [
    ['rinse aid', result.ra_L, result.ra_cost, result.ra_containers],
    ['detergent', result.det_L, result.det_cost, result.det_containers],
    ...(result.san_L === undefined
      ? []
      : [['sanitizer', result.san_L, result.san_cost, result.san_containers] as const]),
  ] as const

  it.each(lines.map((line, index) => [line[0], index, line] as const))(
    '%s litres, money, containers',
    (_, i, line) => {
      const pump = use[i]
      expect(fourDigits(good(pump?.litresPerMonth).value)).toBe(fourDigits(line[1] ?? NaN))
      // money is a printed line, rounded to the cent
      expect(good(pump?.costPerMonth).toFixed(2)).toBe((line[2] ?? NaN).toFixed(2))
      expect(fourDigits(good(pump?.containersPerMonth))).toBe(fourDigits(line[3] ?? NaN))
    },
  )

  it('total and cost per rack', () => {
    expect(fourDigits(good(totals.costPerMonth).toNumber())).toBe(fourDigits(result.cost_month))
    expect(fourDigits(good(totals.costPerRack).toNumber())).toBe(fourDigits(result.cost_rack))
  })

  it('the same with the initial charge given in seconds', () => {
    const seconds = result.charge_s
    if (seconds === undefined) return
    const timed = {
      ...site,
      machines: site.machines.map((machine) => ({
        ...machine,
        pumps: machine.pumps.map((pump) =>
          pump.feeds === 'wash-tank'
            ? {
                ...pump,
                window: null,
                initialChargeSeconds: { value: seconds.toFixed(6), unit: 's' as const },
              }
            : pump,
        ),
      })),
    }
    const again = siteUse(timed, products, settings, '2026-03-01')
    expect(fourDigits(good(again.use[1]?.litresPerMonth).value)).toBe(fourDigits(result.det_L))
  })
})
