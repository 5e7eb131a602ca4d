import { describe, expect, it } from 'vitest'
import { computeWorksheet } from '#core/worksheet/compute'
import { spendOf } from '#core/worksheet/spend-of'
import { entry } from '#core/units/entry'
import {
  caught,
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
import { good } from '../../support/outcomes'

const aid = product()
const glass = cylinder()
const fed = pump({ productId: aid.id })
const testOf = (millilitres: readonly string[], at: string) =>
  caught(
    millilitres.map((volume) => run(entry(volume, 'mL'))),
    { instrumentId: glass.id, at },
  )

/** Halved one evening: half past five on the 9th in Los Angeles is half past one on the 10th in UTC. */
const evening = site({
  timeZone: 'America/Los_Angeles',
  machines: [machine({ pumps: [fed] })],
  visits: [
    visit({
      startedAt: '2026-02-01T18:00:00.000Z',
      work: [work(fed.id, [testOf(['10', '10.1', '9.9'], '2026-02-01T18:10:00.000Z')])],
    }),
    visit({
      startedAt: '2026-03-10T00:30:00.000Z',
      work: [
        work(fed.id, [
          testOf(['10', '10.1', '9.9'], '2026-03-10T00:40:00.000Z'),
          { kind: 'turn', id: uuid(), at: '2026-03-10T00:45:00.000Z', eighths: -4 },
          testOf(['5', '5.1', '4.9'], '2026-03-10T00:50:00.000Z'),
        ]),
      ],
    }),
  ],
})

const costOn = (asOf: string) => {
  const worksheet = computeWorksheet({
    site: evening,
    products: [aid],
    instruments: [glass],
    settings: null,
    asOf,
  })
  const spend = spendOf(worksheet, { site: evening, products: [aid], settings: { serviceLevel: '95' } })
  return { worksheet: good(worksheet.totals.costPerMonth).toFixed(2), spend }
}

describe('the spend on the evening of a visit', () => {
  it.each(['2026-03-09', '2026-03-10', '2026-04-01'])(
    'seen on %s is that of the dose the visit left, as the worksheet has it',
    (asOf) => {
      const { worksheet, spend } = costOn(asOf)
      expect(good(spend.totals.costPerMonth).toFixed(2)).toBe(worksheet)
      expect(good(spend.savings).visits).toHaveLength(1)
    },
  )
})
