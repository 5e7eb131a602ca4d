import { describe, expect, it } from 'vitest'
import { blockingChecks, siteChecks } from '#core/cautions/site-checks'
import { codeLimits } from '#core/sanitize/code-limits'
import { machine, pump } from '#tests/core/sanitize/records'

const limits = codeLimits(null)
const withPumps = { pumps: [pump('p1', null, { role: 'detergent' })] }
const dump = { kind: 'dump-and-refill', heel: null, fill: null } as const
const rows = (m: ReturnType<typeof machine>) => siteChecks(m, limits)
const row = (m: ReturnType<typeof machine>, check: string) => rows(m).find((each) => each.check === check)

describe('site conditions before a pump is adjusted', () => {
  it('blocks on the six conditions that change the dose at once', () => {
    expect(blockingChecks(machine(withPumps))).toEqual([
      'supply-pressure',
      'rinse-pressure',
      'rinse-temperature',
      'drain-air-gap',
      'containers-low',
      'primed-after-change',
    ])
  })

  it('asks every machine class for the supply pressure, with its range marked as practice without a source', () => {
    for (const kind of ['undercounter', 'door', 'conveyor-single-tank', 'conveyor-multi-tank'] as const) {
      const found = row(machine({ class: kind }), 'supply-pressure')
      expect(
        found?.references.map((r) => [r.bound, r.figures[0]?.value, r.figures[0]?.unit, r.from]),
      ).toEqual([
        ['min', 25, 'psi', 'common-practice'],
        ['max', 95, 'psi', 'common-practice'],
      ])
    }
  })

  it('leaves out the rinse pressure where the rinse is pumped, unless the plate states one', () => {
    expect(row(machine({ wash: dump }), 'rinse-pressure')).toBeUndefined()
    const plate = { ...machine().dataPlate, rinsePressureMin: { value: '15', unit: 'psi' as const } }
    expect(row(machine({ wash: dump, dataPlate: plate }), 'rinse-pressure')).toBeDefined()
  })

  it('does not ask a chemical machine for a sanitizing temperature, but for its wash temperature', () => {
    const chemical = machine({ sanitizing: 'chemical', wash: dump })
    expect(row(chemical, 'rinse-temperature')).toBeUndefined()
    expect(row(chemical, 'wash-temperature')?.references[0]?.figures[0]).toEqual({ value: 120, unit: 'degF' })
  })

  // Food Code 4-501.110, -.112 as adopted in WAC 246-215-04545, -04555
  it.each([
    ['door', 150, 180],
    ['conveyor-single-tank', 160, 180],
    ['conveyor-multi-tank', 150, 180],
  ] as const)(
    'shows a %s the code figures %d and %d °F when the plate is not recorded',
    (kind, wash, rinse) => {
      const m = machine({ class: kind })
      expect(row(m, 'wash-temperature')?.references[0]?.figures[0]?.value).toBe(wash)
      expect(row(m, 'rinse-temperature')?.references.map((r) => r.figures[0]?.value)).toEqual([rinse, 194])
    },
  )

  it('puts the data plate before the code, and takes a plate below 180 °F for a single-temperature machine', () => {
    const plate = { ...machine().dataPlate, rinseTemperatureMin: { value: '165', unit: 'degF' as const } }
    const m = machine({ dataPlate: plate })
    expect(row(m, 'rinse-temperature')?.references[0]).toMatchObject({
      from: 'data-plate',
      figures: [{ value: '165', unit: 'degF' }],
    })
    expect(row(m, 'wash-temperature')?.references[0]?.figures[0]?.value).toBe(165)
  })

  it('asks about tubes, signals and labels only where there is a pump', () => {
    const without = rows(machine()).map((each) => each.check)
    expect(without).not.toContain('primed-after-change')
    expect(without).not.toContain('proof-of-delivery')
    expect(rows(machine(withPumps)).map((each) => each.check)).toContain('proof-of-delivery')
    const rinseOnly = machine({ pumps: [pump('p1', null, { role: 'rinse-aid' })] })
    // Food Code 4-204.117 names detergents and sanitizers, not rinse aid
    expect(rows(rinseOnly).map((each) => each.check)).not.toContain('proof-of-delivery')
  })

  it('says for every condition why it matters, who looks, and on what basis', () => {
    for (const each of rows(machine(withPumps))) {
      expect(each.why.length).toBeGreaterThan(20)
      expect(each.basis.length).toBeGreaterThan(10)
      expect(each.question.endsWith('?')).toBe(true)
    }
  })
})
