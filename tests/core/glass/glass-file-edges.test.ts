import * as fc from 'fast-check'
import { expect, it } from 'vitest'
import { check } from '#core/documents/decode'
import { decodeGlassFile } from '#core/documents/glass-file'
import { site as siteSchema } from '#core/documents/site-schema'
import { site } from '../../contract/sample-site'

const name = fc.oneof(
  fc.constantFrom('', 'white-film', 'x'.repeat(200), 'x'.repeat(201), '__proto__', '\u0000', '../x'),
  fc.constantFrom(null, 7, {}, []),
)
const id = fc.constantFrom(
  '5a5a5a5a-0000-4000-8000-000000000001',
  '5A5A5A5A-0000-4000-8000-00000000000F',
  '5a5a5a5a-0000-0000-8000-000000000001',
  '5a5a5a5a00004000800000000000000001',
  '../../etc/passwd',
  '',
  null,
)
const instant = fc.constantFrom(
  '2026-03-09T08:00:00.000Z',
  '2026-03-09T08:00:00Z',
  '2026-03-09T08:00Z',
  '2026-02-29T08:00:00.000Z',
  '2024-02-29T23:59:59.999Z',
  '2026-03-09T24:00:00.000Z',
  '2026-03-09T08:00:00.000+01:00',
  '2026-03-09',
  'x',
  null,
)
const pick = fc.constantFrom('all', 'one-zone', 'unknown', 'new', 'weeks', 'glass', 'yes', 'no', '', null)

/** Mostly right, wrong in one place or two: the edges of what each reader takes. */
const glassCheck = fc
  .record({
    id,
    at: instant,
    machineId: id,
    seen: fc.array(name, { maxLength: 2 }),
    ware: fc.array(pick, { maxLength: 2 }),
    spread: pick,
    since: pick,
    answers: fc.array(fc.record({ evidence: name, answer: pick }), { maxLength: 2 }),
    confirmedCause: name,
    confirmedAt: instant,
  })
  .chain((odd) => {
    const right = {
      id: '5a5a5a5a-0000-4000-8000-000000000001',
      at: '2026-03-09T08:00:00.000Z',
      machineId: null,
      seen: ['white-film'],
      ware: ['glass'],
      spread: 'all',
      since: 'weeks',
      answers: [{ evidence: 'vinegar-removes', answer: 'yes' }],
      confirmedCause: null,
      confirmedAt: null,
    }
    return fc
      .subarray(Object.keys(right) as (keyof typeof right)[], { maxLength: 2 })
      .map((keys) => ({ ...right, ...Object.fromEntries(keys.map((key) => [key, odd[key]])) }))
  })

it('a glass check the window takes from a file is one the host keeps, up to the edge of every limit', () => {
  const tally = { taken: 0, refused: 0 }
  fc.assert(
    fc.property(glassCheck, (one) => {
      const file = {
        format: 'dosewright-glass-check',
        version: 1,
        siteId: '5a5a5a5a-0000-4000-8000-000000000002',
        siteName: 'Somewhere',
        check: one,
      }
      const taken = decodeGlassFile(JSON.stringify(file)).ok
      tally[taken ? 'taken' : 'refused'] += 1
      if (taken)
        expect(check({ schema: siteSchema }, { ...site(), glassChecks: [one] })).toMatchObject({ ok: true })
    }),
    { numRuns: 5_000 },
  )
  expect(Math.min(tally.taken, tally.refused)).toBeGreaterThan(500)
})
