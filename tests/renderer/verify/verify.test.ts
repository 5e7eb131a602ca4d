import { describe, expect, it } from 'vitest'
import type { Verification, VerificationMethod } from '#core/records/index'
import { SHIPPED_LIMITS } from '#core/sanitize/code-limit-table'
import { compareWithLimit } from '#core/sanitize/compare'
import { adviceWords } from '#renderer/screens/verify/advice-words.ts'
import { agreementWords } from '#renderer/screens/verify/agreement-words.ts'
import { checkLabels, METHOD_WORDS, methodsFor, toolOf } from '#renderer/screens/verify/check-words.ts'
import { newCheck } from '#renderer/screens/verify/new-check.ts'
import { product, pump } from '#tests/core/sanitize/records'
import { good } from '#tests/support/outcomes'

const chlorine = product('bleach', { strength: { kind: 'trade-percent', percent: '10', measuredOn: null } })
const quat = product('quat', {
  strength: { kind: 'weight-percent', percent: '10', active: 'quat', measuredOn: null },
})

describe('the checks offered for a pump', () => {
  it('fit its product: chlorine in the rinse, alkalinity in the tank, no titration of rinse aid', () => {
    expect(methodsFor(pump('p', 'bleach', { role: 'sanitizer' }), chlorine)[0]).toBe('strip')
    expect(methodsFor(pump('p', 'bleach', { role: 'sanitizer' }), chlorine)).toContain('chlorine-titration')
    expect(methodsFor(pump('p', 'quat', { role: 'sanitizer' }), quat)).not.toContain('chlorine-drops')
    expect(methodsFor(pump('p', 'soap', { feeds: 'wash-tank', role: 'detergent' }), null)[0]).toBe(
      'alkalinity-drops',
    )
    expect(methodsFor(pump('p', 'aid', { role: 'rinse-aid' }), product('aid'))).toEqual([
      'hardness-drops',
      'hardness-titration',
    ])
  })

  it('ask for what the leaflet gives, in the unit the method comes out in', () => {
    expect(checkLabels('alkalinity-drops').factor).toMatchObject({
      label: 'One drop stands for',
      unit: 'g/L product',
    })
    expect(checkLabels('chlorine-titration').factor).toMatchObject({
      label: 'One mL stands for',
      unit: 'mg/L active',
    })
    expect(checkLabels('strip')).toMatchObject({ factor: null, blank: null })
    // a drop count is always one drop fine
    expect(checkLabels('hardness-drops').step).toBeNull()
  })

  it('have words and a tool each', () => {
    for (const method of Object.keys(METHOD_WORDS) as VerificationMethod[]) {
      expect(checkLabels(method).reading.length).toBeGreaterThan(5)
      expect(['strip', 'titration-kit', 'conductivity-meter']).toContain(toolOf(method))
    }
  })
})

describe('a new check', () => {
  const stamp = { id: 'v2', at: '2026-04-01T10:00:00.000Z' }
  const earlier: Verification = {
    id: 'v1',
    at: '2026-03-01T10:00:00.000Z',
    method: 'alkalinity-drops',
    where: 'wash-tank',
    instrumentId: 'k1',
    reading: '8',
    step: null,
    factor: '0.25',
    blank: '1',
  }

  it('brings kit, factor and blank from the last one of its kind, and never its reading', () => {
    expect(newCheck('alkalinity-drops', { feeds: 'wash-tank' }, [earlier], stamp)).toEqual({
      ...earlier,
      ...stamp,
      reading: null,
    })
  })

  it('starts empty, where the pump feeds', () => {
    expect(newCheck('strip', { feeds: 'final-rinse' }, [earlier], stamp)).toMatchObject({
      where: 'rinse-water',
      factor: null,
    })
    expect(newCheck('conductivity', { feeds: 'wash-tank' }, [], stamp).where).toBe('wash-tank')
  })
})

const rinseAt = (value: string, width: number) =>
  adviceWords(
    good(
      compareWithLimit({ value, unit: 'degF' }, SHIPPED_LIMITS['rinse-temperature-other'], 'reading', width),
    ),
    'point',
  )

describe('what is said about a comparison', () => {
  it('names how far apart, which way, and whom to doubt', () => {
    const words = agreementWords(
      { z: 4.1, agrees: false, relative: -0.16, distrust: 'soil-or-leak' },
      'point',
    )
    expect(words.tone).toBe('warn')
    expect(words.why).toContain('16 % below the prediction')
    expect(words.why).toContain('Doubt the prediction')
    expect(agreementWords({ z: 0.2, agrees: true, relative: 0.01, distrust: null }, 'point').why).toBe(
      'The reading is 1.0 % above the prediction: no more than both may be off.',
    )
  })

  it('advises on a code figure and passes no verdict', () => {
    expect(rinseAt('184', 3)).toMatchObject({
      tone: 'good',
      word: 'at or above it',
      figure: 'at least 180 °F',
    })
    expect(rinseAt('181', 3)).toMatchObject({ tone: 'warn', word: 'at or above it, too near to be sure' })
    expect(rinseAt('170', 3)).toMatchObject({ tone: 'bad', word: 'below it' })
    for (const value of ['170', '181', '184'])
      expect(JSON.stringify(rinseAt(value, 3))).not.toMatch(/compl|pass|fail|sanitised|sanitized safely/i)
  })
})
