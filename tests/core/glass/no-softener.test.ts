import { describe, expect, it } from 'vitest'
import { diagnose } from '#core/glass/diagnose'
import { causeWords } from '#core/glass/words/cause-words'
import { testWords } from '#core/glass/words/tests'
import type { GlassAnswer, Site } from '#core/records/index'
import { openPages } from '#renderer/screens/glass/kitchen/test-answers.ts'
import { check } from '#tests/support/glass-check'
import { site as siteOf } from '#tests/support/make-site'

const found = (softener: Site['water']['softener'], answers: readonly GlassAnswer[] = check.answers) => {
  const plain = siteOf()
  const site = { ...plain, water: { ...plain.water, softener } }
  return diagnose({ check: { ...check, answers }, known: null, site, weights: [], today: '2026-03-10' })
}
const hardScore = (...about: Parameters<typeof found>): number =>
  found(...about).ranking.causes.find(({ cause }) => cause === 'hard-rinse')?.score ?? Number.NaN

const choices = (softener: Site['water']['softener']) =>
  openPages(
    testWords('round', { rinseAtLeast: null, pressure: null }).pages,
    found(softener).findings,
  ).flatMap((page) => (page.kind === 'pick-many' ? page.choices.map(({ is }) => is) : []))

describe('a kitchen whose site record says that there is no water softener', () => {
  it('is not sent to fill one, but to the rep; where there may be one, it is', () => {
    const { operator, technician, next } = causeWords('hard-rinse', 'none')
    expect([...operator, next.text].join(' ')).not.toMatch(/\bsalt\b|\bfill\b/iu)
    expect(next.who).toBe('rep')
    expect(technician.join(' ')).not.toMatch(/bypass|cleaned itself/u)
    for (const softener of ['fitted', 'unknown'] as const) {
      expect(causeWords('hard-rinse', softener).next.text).toMatch(/^Fill the softener with salt\./u)
      expect(causeWords('hard-rinse', softener).next.text).toMatch(/If there is none, call your rep\.$/u)
    }
  })

  it('is not asked for the salt of one', () => {
    expect(choices('fitted')).toContain('softener-empty')
    expect(choices('none')).not.toContain('softener-empty')
    expect(choices('none')).toContain('jets-blocked')
  })

  it('no "no" about its salt speaks against hard water there', () => {
    const said: readonly GlassAnswer[] = [...check.answers, { evidence: 'softener-empty', answer: 'no' }]
    expect(hardScore('fitted', said)).toBeLessThan(hardScore('fitted'))
    expect(hardScore('none', said)).toBe(hardScore('none'))
  })
})
