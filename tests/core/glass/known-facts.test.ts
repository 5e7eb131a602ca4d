import { describe, expect, it } from 'vitest'
import { findingsKnown, knownFacts } from '#core/glass/known-facts'
import type { KnownInput } from '#core/glass/known-types'
import { knownSentence } from '#core/glass/words/sentences'
import type { Machine, Reading, Site, Visit } from '#core/records/index'
import { entry } from '#core/units/entry'
import { computeWorksheet } from '#core/worksheet/compute'
import {
  cylinder,
  machine as machineOf,
  product,
  pump,
  site as siteOf,
  uuid,
  visit as visitOf,
} from '#tests/support/make-site'

const glass = cylinder()
const aid = product()
const aidPump = pump({
  productId: aid.id,
  doseSeconds: entry('9', 's'),
  window: { basis: 'mL-per-rack', low: '0.9', target: '1.0', high: '1.1' },
})
const plate: Machine['dataPlate'] = {
  washTemperatureMin: null,
  rinseTemperatureMin: entry('82', 'degC'),
  rinseTemperatureMax: null,
  rinsePressureMin: entry('15', 'psi'),
  rinsePressureMax: entry('25', 'psi'),
}
const washer = machineOf({ pumps: [aidPump], dataPlate: plate })

/** Volume caught in a minute: the dose per rack is 9 s of it. */
const tested = (millilitres: string, at: string): Visit['work'] => [
  {
    pumpId: aidPump.id,
    steps: [
      {
        kind: 'test',
        id: uuid(),
        at,
        method: 'catch',
        instrumentId: glass.id,
        tubeImmersed: false,
        primed: true,
        productTemperature: null,
        runs: [0, 1, 2].map(() => ({
          id: uuid(),
          start: null,
          end: entry(millilitres, 'mL'),
          seconds: entry('60', 's'),
          excluded: null,
        })),
      },
    ],
    verifications: [],
  },
]
const reading = (
  kind: Reading['kind'],
  value: Reading['value'],
  at: string,
  count: string | null = null,
) => ({
  id: uuid(),
  machineId: washer.id,
  kind,
  at,
  value,
  count,
})

function known(over: Partial<Visit>, more: Partial<Site> = {}, today = '2026-03-10', fall = 0) {
  const at = over.startedAt ?? '2026-03-01T09:00:00.000Z'
  const site = siteOf({ machines: [washer], visits: [visitOf({ ...over, startedAt: at })], ...more })
  const input: KnownInput = {
    site,
    machine: washer,
    visits: computeWorksheet({ site, products: [aid], instruments: [glass], settings: null, asOf: today })
      .visits,
    today,
    fallPerDay: new Map([[aidPump.id, fall]]),
  }
  return knownFacts(input)
}
const yes = (facts: ReturnType<typeof known>) =>
  findingsKnown(facts)
    .filter((finding) => finding.answer === 'yes')
    .map((finding) => finding.evidence)
const at = '2026-03-01T09:00:00.000Z'

const check = (answer: 'ok' | 'not-ok' | 'not-checked'): Partial<Visit> => ({
  checks: [{ machineId: washer.id, check: 'jets-and-screens', answer, value: null, note: '' }],
})

describe('what the last visit knows', () => {
  it.each([
    // dose = caught mL in 60 s x 9 / 60 against 1.0 mL per rack
    ['4.0', ['ra-dose-low']],
    ['6.7', ['ra-dose-ok']],
    ['5.0', []],
    ['8.5', []],
    ['11', ['ra-dose-high']],
  ] as const)('a catch of %s mL a minute against 1 mL per rack says %j', (caught, expected) => {
    expect(yes(known({ work: tested(caught, at) }))).toEqual(expected)
  })

  it('carries the dose on to today by its drift', () => {
    expect(yes(known({ work: tested('6.7', at) }, {}, '2026-05-30', 0))).toEqual(['ra-dose-ok'])
    // ln(0.7 / 1.005) / 90 d = -0.0040: a fall of 0.005 a day passes 70 % within the 90 days.
    expect(yes(known({ work: tested('6.7', at) }, {}, '2026-05-30', 0.005))).toEqual(['ra-dose-low'])
  })

  it('says when it is too old to trust, and then does not count', () => {
    const facts = known({ work: tested('4.0', at) }, {}, '2026-07-15')
    expect(facts.find((fact) => fact.kind === 'rinse-aid-dose')).toMatchObject({
      trusted: false,
      daysOld: 136,
    })
    expect(findingsKnown(facts)).toEqual([])
    expect(facts.map((fact) => knownSentence(fact, '1 March'))).toEqual([
      'On 1 March: the rinse aid was too low. That is too long ago, so we do not count it.',
    ])
  })

  it.each([
    [entry('75', 'degC'), 'yes'],
    [entry('179', 'degF'), 'yes'],
    [entry('180', 'degF'), 'no'],
    [entry('84', 'degC'), 'no'],
  ] as const)('a rinse of %j against a data plate of 82 °C: cool is %s', (value, answer) => {
    const facts = known({ readings: [reading('rinse-temperature', value, at)] })
    expect(findingsKnown(facts)).toEqual([{ evidence: 'rinse-cool', answer, from: 'record' }])
  })

  it.each([
    [entry('20', 'psi'), 'no'],
    [entry('1.5', 'bar'), 'no'],
    [entry('90', 'kPa'), 'yes'],
    [entry('30', 'psi'), 'yes'],
  ] as const)('a rinse pressure of %j against 15 to 25 psi: bad is %s', (value, answer) => {
    const facts = known({ readings: [reading('rinse-pressure', value, at)] })
    expect(findingsKnown(facts)).toEqual([{ evidence: 'pressure-bad', answer, from: 'record' }])
  })

  it.each([
    ['120', '350', ['hardness-high']],
    ['8', '520', ['hardness-low-tds-high']],
    ['8', '60', ['hard-and-tds-low']],
    ['30', '200', []],
  ] as const)('rinse water of %s mg/L hardness and %s mg/L solids says %j', (hard, solids, expected) => {
    const facts = known({
      readings: [
        reading('hardness-rinse', entry(hard, 'mg/L-CaCO3'), at),
        reading('solids-rinse', entry(solids, 'mg/L'), at),
      ],
    })
    expect(yes(facts)).toEqual(expected)
  })

  it('does not let a hardness too old to count back in by the solids, which last longer', () => {
    const soft = {
      readings: [
        reading('hardness-rinse', entry('8', 'mg/L-CaCO3'), at),
        reading('solids-rinse', entry('520', 'mg/L'), at),
      ],
    }
    // read on the 1st of March: hardness lasts 60 days, solids 120
    expect(yes(known(soft, {}, '2026-04-30'))).toEqual(['hardness-low-tds-high'])
    expect(yes(known(soft, {}, '2026-05-01'))).toEqual([])
    expect(known(soft, {}, '2026-05-01').map(({ kind, trusted }) => [kind, trusted])).toEqual([
      ['hardness', false],
      ['solids', true],
    ])
  })

  it('takes the hardness of the site record only where no softener stands before the rinse', () => {
    const water = {
      hardness: entry('15', 'deg-dH'),
      solids: null,
      conductivity: null,
      alkalinity: null,
      calcium: null,
      pH: null,
      temperature: null,
    } as const
    expect(yes(known({}, { water: { ...water, softener: 'none' } }))).toEqual(['hardness-high'])
    expect(yes(known({}, { water: { ...water, softener: 'fitted' } }))).toEqual([])
    expect(yes(known({}, { water: { ...water, softener: 'unknown' } }))).toEqual([])
  })

  it('counts racks since the fill only on the day itself', () => {
    const busy = { readings: [reading('racks-since-fill', null, at, '5000')] }
    expect(yes(known(busy, {}, '2026-03-01'))).toEqual(washer.racksPerDay === null ? [] : ['racks-many'])
    expect(yes(known(busy, {}, '2026-03-02'))).toEqual([])
  })

  it('knows nothing of another machine, and nothing from a reading of another dimension', () => {
    const other = { ...reading('rinse-temperature', entry('60', 'degC'), at), machineId: uuid() }
    expect(known({ readings: [other] })).toEqual([])
    expect(known({ readings: [reading('rinse-temperature', entry('60', 'kPa'), at)] })).toEqual([])
  })

  it('uses an answered site check where nothing was measured', () => {
    expect(yes(known(check('not-ok')))).toEqual(['jets-blocked'])
    expect(findingsKnown(known(check('ok')))).toEqual([
      { evidence: 'jets-blocked', answer: 'no', from: 'record' },
    ])
    expect(known(check('not-checked'))).toEqual([])
  })
})
