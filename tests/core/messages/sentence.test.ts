import { describe, expect, it } from 'vitest'
import { placeName } from '#core/messages/place'
import { sentence } from '#core/messages/sentence'
import { CANNOT_COMPUTE } from '#core/messages/cannot-compute'
import { MISSING } from '#core/messages/missing-input'
import { parseNumber } from '#core/units/parse'
import type { CannotCompute, MissingInput, Problem } from '#core/problem'

/** One of each code; the compiler asks for a new one when a code is added. */
const ONE_OF_EACH: { readonly [C in Problem['code']]: Extract<Problem, { readonly code: C }> } = {
  'number-missing': { code: 'number-missing', field: 'doseSeconds' },
  'number-unreadable': { code: 'number-unreadable', field: 'machines.0.pumps.1.window.low', text: '12x' },
  'number-ambiguous': {
    code: 'number-ambiguous',
    field: 'price',
    text: '1,234',
    readings: ['1.234', '1234'],
  },
  'number-out-of-range': { code: 'number-out-of-range', field: 'density', low: 0.8, high: 1.6, unit: 'g/mL' },
  'unit-unknown': { code: 'unit-unknown', field: 'perRack', text: 'stone', expected: ['mL', 'L'] },
  missing: { code: 'missing', field: 'x', needed: 'density' },
  'no-runs': { code: 'no-runs' },
  'end-above-start': { code: 'end-above-start', field: 'runs.2.end' },
  'tube-wider-than-cylinder': { code: 'tube-wider-than-cylinder', field: 'tube.outsideDiameter' },
  'over-capacity': { code: 'over-capacity', field: 'runs.0.start', capacity: '50 mL' },
  'too-few-runs': { code: 'too-few-runs', have: 1, need: 3 },
  'currencies-differ': { code: 'currencies-differ', first: 'EUR', second: 'USD' },
  'no-price': { code: 'no-price', product: 'Rinse aid' },
  'document-not-json': { code: 'document-not-json', place: 'line 3, column 7' },
  'document-foreign': { code: 'document-foreign' },
  'document-newer': { code: 'document-newer', version: 2, known: 1 },
  'document-malformed': { code: 'document-malformed', place: 'site.visits.0.by', reason: 'is missing' },
  'document-too-large': { code: 'document-too-large', megabytes: 100 },
  'document-damaged': { code: 'document-damaged', document: 'Corner Cafe', setAside: 'damaged/x.json' },
  'document-changed-elsewhere': { code: 'document-changed-elsewhere', document: 'Corner Cafe' },
  'not-found': { code: 'not-found', what: 'the site' },
  'already-there': { code: 'already-there', what: 'Corner Cafe' },
  'not-saved': { code: 'not-saved', reason: 'the disk is full' },
  'data-folder-in-use': { code: 'data-folder-in-use', processId: 4711, since: '14:05' },
  'visit-closed': { code: 'visit-closed', visitId: 'x' },
  'unknown-method': { code: 'unknown-method', method: 'site.guess' },
  'bad-request': { code: 'bad-request', place: 'id', reason: 'is missing' },
  internal: { code: 'internal', reference: 'A1B2C3' },
  stopped: { code: 'stopped' },
  unavailable: { code: 'unavailable', what: 'the browser prints instead' },
  'host-gone': { code: 'host-gone' },
  'no-session': { code: 'no-session' },
  'cannot-compute': { code: 'cannot-compute', reason: 'zero-flow' },
}

const all: readonly Problem[] = [
  ...Object.values(ONE_OF_EACH),
  ...(Object.keys(MISSING) as MissingInput[]).map(
    (needed) => ({ code: 'missing', field: '', needed }) as const,
  ),
  ...(Object.keys(CANNOT_COMPUTE) as CannotCompute[]).map(
    (reason) => ({ code: 'cannot-compute', reason }) as const,
  ),
  { code: 'document-damaged', document: 'Corner Cafe', setAside: null },
  { code: 'number-out-of-range', field: 'a', low: null, high: 100, unit: 'percent' },
  { code: 'number-out-of-range', field: 'a', low: 0, high: null, unit: '' },
]

describe('what a person reads when something is wrong', () => {
  // the words GOV.UK's error-message guidance rules out
  it.each(all)('$code: whole sentences, none of the words that blame or plead', (problem) => {
    const text = sentence(problem)
    expect(text).toMatch(/^["A-Z\d].*[.]$/)
    expect(text).not.toMatch(/\b(?:in)?valid|please|sorry|forbidden|oops/i)
    expect(text).not.toMatch(/undefined|null|NaN|\[object/)
  })

  it.each(all)('$code: says what to do, not only what is wrong', (problem) => {
    const text = sentence(problem)
    expect(text.split(/[.;:,] /).length).toBeGreaterThan(1)
  })

  it('leads to the place in the words of the trade', () => {
    expect(placeName('site.machines.1.pumps.0.window.low')).toBe(
      'machine 2, pump 1, target window, low limit',
    )
    expect(placeName('visits.3.work.0.steps.2.runs.1.end.value')).toBe(
      'visit 4, pump work 1, step 3, run 2, reading after',
    )
    expect(placeName('racksPerDay')).toBe('racks per day')
    expect(placeName('site')).toBe('site')
    expect(placeName('site.calendar')).toBe('calendar')
    expect(placeName('water.pH')).toBe('water, pH')
    expect(placeName('line 3, column 7')).toBe('line 3, column 7')
  })

  it('cuts and cleans text that came from a file, so that it cannot pose as our own words', () => {
    const text = sentence({ code: 'not-found', what: `a\u202Eb\n\u0000${'x'.repeat(10_000)}` })
    expect(text.length).toBeLessThan(200)
    // eslint-disable-next-line no-control-regex -- these are the signs looked for
    expect(text).not.toMatch(/[\u202e\n\u0000]/)
  })
})

describe('a number written with its thousands set apart', () => {
  it.each(['1.234,5', '1,234.5', '1 234', "1'234.50", '12.345.678', '-1.234,5 mL'])(
    '%s: is told to leave the sign out',
    (text) => {
      const read = parseNumber(text, { field: 'price', decimalSign: 'point' })
      expect(read.ok ? '' : sentence(read.problem)).toBe(
        `"${text}" has a sign between its thousands. Write price without it, such as 1234.5 or 1234,5.`,
      )
    },
  )

  it.each(['12x', '1e3', '12,34,56', '1.23,4', 'zwölf', '1 23'])('%s is not one', (text) => {
    expect(sentence({ code: 'number-unreadable', field: 'price', text })).toMatch(/is not a number/u)
  })
})
