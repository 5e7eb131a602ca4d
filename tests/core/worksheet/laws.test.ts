import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { siteChecks } from '#core/cautions/site-checks'
import { codeLimits } from '#core/sanitize/code-limits'
import type { SetupSnapshot, Site, Visit } from '#core/records/index'
import { convertExactly } from '#core/units/quantity'
import { entry } from '#core/units/entry'
import { computeWorksheet } from '#core/worksheet/compute'
import {
  caught,
  closing,
  cylinder,
  machine,
  product,
  pump,
  run,
  site,
  uuid,
  visit,
  work,
} from '../../support/make-site'
import { allFinite, good } from '../../support/outcomes'

const rinseAid = product()
const glass = cylinder()

function calibrated(flow: string, over: Partial<Site> = {}): Site {
  const own = pump({
    productId: rinseAid.id,
    window: { basis: 'ppm-vv', low: '180', target: '200', high: '220' },
  })
  return site({
    machines: [machine({ pumps: [own] })],
    visits: [
      visit({
        work: [
          work(own.id, [
            caught([run(entry(flow, 'mL')), run(entry(flow, 'mL')), run(entry(flow, 'mL'))], {
              instrumentId: glass.id,
            }),
          ]),
        ],
      }),
    ],
    ...over,
  })
}

const compute = (of: Site, asOf = '2026-03-10'): ReturnType<typeof computeWorksheet> =>
  computeWorksheet({ site: of, products: [rinseAid], instruments: [glass], settings: null, asOf })

describe('computeWorksheet', () => {
  it('gives the same figures for entries in US and in metric units, to 1e-12', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 480 }),
        fc.integer({ min: 10, max: 90 }),
        fc.integer({ min: 100, max: 900 }),
        (tenths, seconds, water) => {
          const inMetric = { volume: (tenths / 10).toFixed(1), rinse: (water / 100).toFixed(2) }
          const us = {
            volume: convertExactly(inMetric.volume, 'mL', 'fl-oz-us').toFixed(15),
            rinse: convertExactly(inMetric.rinse, 'L', 'gal-us').toFixed(15),
          }
          const figures = (volume: ReturnType<typeof entry>, rinse: typeof volume): readonly number[] => {
            const own = pump({ productId: rinseAid.id, doseSeconds: entry('9', 's') })
            const place = site({
              machines: [
                machine({
                  pumps: [own],
                  rinse: { kind: 'measured', perRack: rinse as never, spread: '1' },
                }),
              ],
              visits: [
                visit({
                  work: [
                    work(own.id, [
                      caught(
                        [1, 2, 3].map(() => run(volume, entry(String(seconds), 's'))),
                        {
                          instrumentId: glass.id,
                        },
                      ),
                    ]),
                  ],
                }),
              ],
            })
            const worksheet = compute(place)
            const test = worksheet.visits[0]?.pumps[0]?.asLeft
            if (test === null || test === undefined) throw new Error('the test was lost')
            return [
              good(test.flow).value,
              good(test.dose).value,
              ...test.strengths.map((one) => good(one).value),
              good(worksheet.use[0]?.litresPerMonth ?? (worksheet.totals.racksPerMonth as never)).value,
            ]
          }
          const metric = figures(entry(inMetric.volume, 'mL'), entry(inMetric.rinse, 'L'))
          const american = figures(entry(us.volume, 'fl-oz-us'), entry(us.rinse, 'gal-us'))
          metric.forEach((value, index) =>
            expect(Math.abs((american[index] ?? 0) - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value)),
          )
        },
      ),
      { numRuns: 60 },
    )
  })

  it('keeps a closed visit as it was when the machine is set up anew', () => {
    const before = calibrated('5')
    const snapshot: SetupSnapshot = {
      id: uuid(),
      at: closing.at,
      machines: before.machines,
      water: before.water,
      products: [rinseAid],
      instruments: [glass],
    }
    const closed: Site = {
      ...before,
      visits: before.visits.map((one): Visit => ({ ...one, closing, setupId: snapshot.id })),
      snapshots: [snapshot],
    }
    const changed: Site = {
      ...closed,
      machines: closed.machines.map((one) => ({
        ...one,
        rinse: { kind: 'measured', perRack: entry('2.5', 'L'), spread: '0' },
        pumps: one.pumps.map((own) => ({ ...own, doseSeconds: entry('12', 's') })),
      })),
    }
    const [then, now] = [compute(closed), compute(changed)]
    expect(now.visits).toEqual(then.visits)
    // The month, however, is worked out with the machine as it stands: 5 mL/min for 12 s is 1 mL, not 0.75.
    const [was, is] = [then, now].map((one) => good(one.use[0]?.litresPerMonth as never) as { value: number })
    expect((is?.value ?? 0) / (was?.value ?? 1)).toBeCloseTo(12 / 9, 10)
  })

  it('refuses a turn until the conditions are answered, the cautions read and the series good, and says each', () => {
    const open = calibrated('4')
    const advice = compute(open).visits[0]?.pumps[0]?.advice
    expect(advice).toMatchObject({ kind: 'refuse' })
    expect(advice?.kind === 'refuse' && advice.reasons).toContain('conditions-not-answered')
    expect(advice?.kind === 'refuse' && advice.reasons).toContain('caution-not-acknowledged')
  })

  it('advises clockwise for a pump that gives too little once everything is answered', () => {
    expect(ready('4.2')).toMatchObject({ kind: 'turn', backOffEighths: 0 })
    const up = ready('4.2')
    expect(up?.kind === 'turn' && up.eighths).toBeGreaterThan(0)
    const down = ready('7.1')
    expect(down?.kind === 'turn' && down.eighths).toBeLessThan(0)
    expect(down?.kind === 'turn' && down.backOffEighths).toBeGreaterThan(0)
  })

  it('leaves a pump alone that is proved in', () => {
    expect(ready('5.05', '0.1')).toMatchObject({ kind: 'leave', reason: 'proved-in' })
  })

  it('never lets NaN or infinity out, whatever stands in the entries', () => {
    const number = fc.oneof(
      fc.constantFrom('0', '-1', '999999999999999', '0.000000000000001', '5', '60', '100'),
      fc.integer({ min: -1000, max: 100_000 }).map(String),
    )
    fc.assert(
      fc.property(number, number, number, number, number, number, (flow, time, water, racks, days, price) => {
        const odd = product({
          id: rinseAid.id,
          density: entry(price, 'g/mL'),
          prices: [{ from: '2026-01-01', currency: 'EUR', price, containerSize: entry(water, 'L') }],
        })
        const own = pump({
          productId: odd.id,
          doseSeconds: entry(time, 's'),
          window: { basis: 'ppm-vv', low: flow, target: water, high: racks },
        })
        const place = site({
          calendar: {
            daysPerWeek: days,
            closures: [],
            seasons: [{ month: 3, percent: racks }],
            growthPercentPerYear: price,
          },
          machines: [
            machine({
              pumps: [own],
              racksPerDay: racks,
              rinse: { kind: 'measured', perRack: entry(water, 'L'), spread: price },
            }),
          ],
          visits: [
            visit({
              work: [
                work(own.id, [
                  caught([run(entry(flow, 'mL'), entry(time, 's')), run(entry(water, 'mL'))], {
                    instrumentId: glass.id,
                  }),
                ]),
              ],
            }),
          ],
        })
        expect(
          allFinite(
            computeWorksheet({
              site: place,
              products: [odd],
              instruments: [glass],
              settings: null,
              asOf: '2026-03-10',
            }),
          ),
        ).toBe(true)
      }),
      { numRuns: 300 },
    )
  })

  it('says which input is missing instead of a number', () => {
    const bare = calibrated('5', {})
    const none = computeWorksheet({
      site: bare,
      products: [],
      instruments: [],
      settings: null,
      asOf: '2026-03-10',
    })
    expect(none.use[0]?.litresPerMonth.ok).toBe(false)
    expect(none.visits[0]?.pumps[0]?.missing.map((one) => one.code)).toContain('missing')
    expect(none.totals.costPerMonth.ok).toBe(false)
  })
})

/** The advice at a pump found at a flow, once everything a turn waits for is answered. */
function ready(
  flow: string,
  step = '0.05',
): ReturnType<typeof compute>['visits'][number]['pumps'][number]['advice'] {
  const fine = cylinder({
    capacity: entry('10', 'mL'),
    graduation: entry(step, 'mL'),
    tolerance: entry('0.02', 'mL'),
  })
  const base = calibrated(flow)
  const [kitchen] = base.machines
  const [first] = base.visits
  if (kitchen === undefined || first === undefined) throw new Error('the site is empty')
  const answered = visit({
    checks: siteChecks(kitchen, codeLimits(null)).map((row) => ({
      machineId: kitchen.id,
      check: row.check,
      answer: 'ok',
      value: null,
      note: '',
    })),
    cautions: ['read-label', 'protect-yourself'].flatMap((caution) => [
      { caution, productId: null, at: first.startedAt },
      { caution, productId: rinseAid.id, at: first.startedAt },
    ]),
    work: first.work.map((one) => ({
      ...one,
      steps: one.steps.map((s, i) =>
        s.kind === 'test'
          ? {
              ...s,
              instrumentId: fine.id,
              runs: s.runs.map((r, j) => ({
                ...r,
                end: entry((Number(flow) + 0.02 * (j - 1) + i).toFixed(2), 'mL'),
              })),
            }
          : s,
      ),
    })),
  })
  const worksheet = computeWorksheet({
    site: { ...base, visits: [answered] },
    products: [rinseAid],
    instruments: [fine],
    settings: null,
    asOf: '2026-03-10',
  })
  return worksheet.visits[0]?.pumps[0]?.advice ?? null
}
