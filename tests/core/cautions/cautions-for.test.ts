import { describe, expect, it } from 'vitest'
import { CAUTIONS } from '#core/cautions/caution-table'
import { cautionsFor } from '#core/cautions/cautions-for'
import { missingAcknowledgements } from '#core/cautions/missing-acknowledgements'
import type { Hazard } from '#core/records/index'
import type { CautionTrigger } from '#core/cautions/types'
import { machine, product, pump } from '#tests/core/sanitize/records'

const bleach = product('bleach', {
  name: 'Chlorine sanitizer',
  role: 'sanitizer',
  strength: { kind: 'trade-percent', percent: '10', measuredOn: null },
})
const descaler = product('descaler', { name: 'Scale remover', role: 'delimer' })
const rinse = product('rinse', { name: 'Rinse aid', role: 'rinse-aid', hazards: ['acid'] })
const quat = product('quat', {
  name: 'Surface quat',
  strength: { kind: 'weight-percent', percent: '10', active: 'quat', measuredOn: null },
})
const soap = product('soap', { name: 'Wash detergent', role: 'detergent' })
const library = [bleach, descaler, rinse, quat, soap]

const site = (...ids: readonly string[]) => ({
  machines: [machine({ pumps: ids.map((id) => pump(`pump-${id}`, id)) })],
  stock: [],
})

const ids = (trigger: CautionTrigger, productId: string | null, ...onSite: readonly string[]) =>
  cautionsFor({ site: site(...onSite), products: library, trigger, productId }).map((c) => c.id)

describe('cautions before the first test', () => {
  it('asks for the label, gloves and goggles for any product, and for nothing that does not concern it', () => {
    expect(ids('before-first-test', 'rinse', 'rinse')).toEqual(['read-label', 'protect-yourself'])
  })

  it('warns of a corrosive product even when nobody ticked the hazard of a detergent', () => {
    expect(ids('before-first-test', 'soap', 'soap')).toContain('corrosive')
  })

  // rinse aid among the acids that must not meet chlorine: common practice, no source; most are acidic
  it('takes a rinse aid for an acid beside chlorine though nobody ticked it, unless its label says alkaline', () => {
    const cases: readonly (readonly [readonly Hazard[], boolean])[] = [
      [[], true],
      [['irritant'], true],
      [['alkaline'], false],
    ]
    for (const [hazards, warned] of cases) {
      const [first] = cautionsFor({
        site: site('bleach', 'plain'),
        products: [bleach, product('plain', { role: 'rinse-aid', hazards })],
        trigger: 'before-first-test',
        productId: 'plain',
      })
      expect([hazards, first?.id === 'never-mix']).toEqual([hazards, warned])
    }
  })

  it('names both products when chlorine and acid are on one site, whichever pump is worked on', () => {
    for (const [at, other] of [
      [bleach, rinse],
      [rinse, bleach],
    ] as const) {
      const [first] = cautionsFor({
        site: site('bleach', 'rinse'),
        products: library,
        trigger: 'before-first-test',
        productId: at.id,
      })
      expect(first?.id).toBe('never-mix')
      expect(first?.severity).toBe('stop')
      expect(first?.text).toContain(at.name)
      expect(first?.text).toContain(other.name)
      expect(first?.partners).toEqual([{ productId: other.id, name: other.name, releases: 'chlorine-gas' }])
    }
  })

  it('lists every partner and what each gives off with chlorine', () => {
    const [first] = cautionsFor({
      site: site('bleach', 'rinse', 'descaler', 'quat'),
      products: library,
      trigger: 'before-first-test',
      productId: 'bleach',
    })
    expect(first?.partners.map((partner) => [partner.name, partner.releases])).toEqual([
      ['Scale remover', 'chlorine-gas'],
      ['Rinse aid', 'chlorine-gas'],
      ['Surface quat', 'chloramine-gas'],
    ])
    expect(first?.text).toContain('Scale remover, Rinse aid and Surface quat')
  })

  it('finds an acid that is only in the store room', () => {
    const stocked = {
      machines: site('bleach').machines,
      stock: [
        {
          id: 's1',
          on: '2026-03-01',
          productId: 'descaler',
          kind: 'count' as const,
          fullContainers: '1',
          containerSize: { value: '5', unit: 'L' as const },
          part: null,
          tare: null,
          reference: '',
          visitId: null,
        },
      ],
    }
    const found = cautionsFor({
      site: stocked,
      products: library,
      trigger: 'before-first-test',
      productId: 'bleach',
    })
    expect(found[0]?.partners.map((partner) => partner.productId)).toEqual(['descaler'])
  })

  it('does not cry wolf: an acid in the library but not on the site is no partner', () => {
    expect(ids('before-first-test', 'bleach', 'bleach')).not.toContain('never-mix')
    expect(ids('before-first-test', 'quat', 'quat', 'rinse')).not.toContain('never-mix')
  })

  it('still asks for label and goggles when no product is named at the pump', () => {
    const found = cautionsFor({
      site: site(),
      products: library,
      trigger: 'before-first-test',
      productId: null,
    })
    expect(found.map((caution) => caution.id)).toEqual(['read-label', 'protect-yourself'])
    expect(found[0]?.text).toContain('the product')
  })
})

describe('cautions at other moments', () => {
  it.each([
    ['tube-moved', ['flush-and-swap']],
    ['panel-off', ['isolate-power', 'licensed-only']],
    ['licensed-work', ['licensed-only']],
    ['hot-water-reading', ['scald']],
    ['sanitizer-outside-label', ['do-not-serve']],
    ['operator-view', ['operator-limits']],
    ['spill', ['spill-first-aid']],
    ['after-visit', ['leave-safe']],
  ] as const)('%s shows %j', (trigger, expected) => {
    expect(ids(trigger, 'bleach', 'bleach')).toEqual(expected)
  })

  it('says again what must not meet when a tube changes container', () => {
    expect(ids('tube-moved', 'bleach', 'bleach', 'rinse')).toEqual(['never-mix', 'flush-and-swap'])
  })

  it('leaves no caution without a trigger, and no id twice', () => {
    expect(CAUTIONS.every((row) => row.triggers.length > 0)).toBe(true)
    expect(new Set(CAUTIONS.map((row) => row.id)).size).toBe(CAUTIONS.length)
  })

  it('stays short enough to be read where it is shown', () => {
    for (const row of CAUTIONS) expect(row.text.split(/\s+/).length).toBeLessThanOrEqual(45)
  })
})

describe('a reworded caution', () => {
  const request = {
    site: site('bleach'),
    products: library,
    trigger: 'before-first-test' as const,
    productId: 'bleach',
  }
  it('shows the site owner’s words with the product’s name put in', () => {
    const found = cautionsFor({ ...request, texts: [{ caution: 'read-label', text: '{product}: read it.' }] })
    expect(found.find((c) => c.id === 'read-label')).toMatchObject({
      text: 'Chlorine sanitizer: read it.',
      edited: true,
    })
  })
  it('cannot be silenced by an empty text', () => {
    const found = cautionsFor({ ...request, texts: [{ caution: 'read-label', text: '  ' }] })
    expect(found.find((c) => c.id === 'read-label')?.text).toContain('safety data sheet')
  })
})

const beforeTest = (productId: string) =>
  cautionsFor({ site: site('bleach', 'soap'), products: library, trigger: 'before-first-test', productId })

describe('acknowledgements', () => {
  it('is asked once per product and visit, and the general ones once per visit', () => {
    const first = beforeTest('bleach')
    expect(missingAcknowledgements({ cautions: [] }, first)).toEqual(first)
    const given = first.map((caution) => ({
      caution: caution.id,
      productId: caution.productId,
      at: '2026-03-09T14:05:00.000Z',
    }))
    expect(missingAcknowledgements({ cautions: given }, first)).toEqual([])
    expect(missingAcknowledgements({ cautions: given }, beforeTest('soap')).map((c) => c.id)).toEqual([
      'read-label',
      'corrosive',
    ])
  })

  it('asks for no word where none is needed', () => {
    const found = cautionsFor({ site: site(), products: [], trigger: 'hot-water-reading' })
    expect(missingAcknowledgements({ cautions: [] }, found)).toEqual([])
  })
})
