import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findingsOfCheck, pagesAsked, testsAsked } from '#core/glass/check-findings'
import { isUsable, priorKey, weightKey } from '#core/glass/model'
import { PICTURE_IDS } from '#core/glass/pictures'
import { NOTICED } from '#core/glass/signs'
import { TESTS } from '#core/glass/tests'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import type { GlassCheck, Site } from '#core/records/index'
import {
  answerTest,
  confirmCause,
  pickMachine,
  pickNoticed,
  pickPictures,
  pickSince,
  pickSpread,
  pickWare,
  recordCure,
  removeCheck,
  resetGlassWeights,
  setGlassWeight,
  startCheck,
  takeCheck,
  takeLastBack,
} from '#renderer/commands/glass.ts'
import { machine, site as siteOf, uuid, visit } from '#tests/support/make-site'

const ID = uuid()
const washer = machine()
const begun = (): Site =>
  startCheck(siteOf({ machines: [washer], visits: [visit()] }), {
    id: ID,
    at: '2026-03-10T09:00:00.000Z',
    machineId: null,
  })
const only = (site: Site): GlassCheck => {
  const check = site.glassChecks.find((one) => one.id === ID)
  if (check === undefined) throw new Error('the check is gone')
  return check
}
const answersOf = (site: Site): readonly string[] =>
  findingsOfCheck(only(site)).map(({ evidence, answer }) => `${evidence} ${answer}`)

const anyEdit = fc.oneof(
  fc.tuple(fc.subarray([...PICTURE_IDS]), fc.boolean()).map(
    ([seen, all]) =>
      (site: Site) =>
        pickPictures(site, ID, seen, all),
  ),
  fc.tuple(fc.subarray([...NOTICED]), fc.boolean()).map(
    ([noticed, all]) =>
      (site: Site) =>
        pickNoticed(site, ID, noticed, all),
  ),
  fc.constant((site: Site) => pickMachine(site, ID, washer.id)),
  fc
    .subarray(['glass', 'cutlery', 'plates'] as const)
    .map((ware) => (site: Site) => pickWare(site, ID, ware)),
  fc.constantFrom('all', 'one-zone', 'unknown').map((spread) => (site: Site) => pickSpread(site, ID, spread)),
  fc.constantFrom('new', 'weeks', 'unknown').map((since) => (site: Site) => pickSince(site, ID, since)),
  fc.tuple(fc.constantFrom(...TESTS), fc.constantFrom('yes', 'no', 'unknown')).map(
    ([test, answer]) =>
      (site: Site) =>
        answerTest(
          site,
          ID,
          test.id,
          test.parts.flatMap((part) => part.map((evidence) => ({ evidence, answer }))),
        ),
  ),
)

describe('what an operator can change', () => {
  it('is the list of glass checks and nothing else of the site', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { maxLength: 12 }), (edits) => {
        const before = begun()
        const after = edits.reduce((site, edit) => edit(site), recordCure(before, ID, 'grease', false))
        expect({ ...after, glassChecks: [] }).toEqual({ ...before, glassChecks: [] })
        expect(after.machines).toBe(before.machines)
        expect(after.visits).toBe(before.visits)
      }),
    )
  })

  it('can be taken back one page at a time to the start', () => {
    fc.assert(
      fc.property(fc.uniqueArray(anyEdit, { maxLength: 8 }), (edits) => {
        const start = begun()
        const done = edits.reduce((site, edit) => edit(site), start)
        const back = edits.reduce((site) => takeLastBack(site, ID), done)
        expect(only(back).answers).toEqual([])
        expect(takeLastBack(back, ID)).toEqual(back)
      }),
    )
  })

  it('counts pictures not picked as not seen only when told that this is all', () => {
    expect(answersOf(pickPictures(begun(), ID, ['white-film'], false))).toEqual(['white-film yes'])
    const all = answersOf(pickPictures(begun(), ID, ['white-film', 'foam'], true))
    expect(all).toContain('clear-spots no')
    expect(all).toContain('foam-or-streaks yes')
    expect(all).not.toContain('foam-or-streaks no')
    expect(all).not.toContain('white-film no')
  })

  it('counts what was not noticed as not there only when told that this is all', () => {
    expect(answersOf(pickNoticed(begun(), ID, ['feels-greasy'], false))).toEqual(['feels-greasy yes'])
    const all = answersOf(pickNoticed(begun(), ID, ['feels-greasy'], true))
    expect(all.filter((answer) => answer.endsWith(' yes'))).toEqual(['feels-greasy yes'])
    expect(all).toHaveLength(NOTICED.length)
  })

  it('takes only a cure back when a cure came last', () => {
    const site = recordCure(pickWare(begun(), ID, ['glass']), ID, 'grease', false)
    expect(only(takeLastBack(site, ID)).ware).toEqual(['glass'])
    expect(only(takeLastBack(takeLastBack(site, ID), ID)).ware).toEqual([])
  })

  it('keeps what was asked, in pages and tests', () => {
    const site = answerTest(pickSpread(begun(), ID, 'unknown'), ID, 'pin', [
      { evidence: 'scratch-removes', answer: 'unknown' },
    ])
    expect(pagesAsked(only(site))).toEqual(['where'])
    expect(testsAsked(only(site))).toEqual(['pin'])
  })
})

describe('what the rep can do with a check', () => {
  it('confirms a cause with its time, and takes it back', () => {
    const at = '2026-03-12T10:00:00.000Z'
    const site = confirmCause(begun(), ID, 'etched', at)
    expect(only(site)).toMatchObject({ confirmedCause: 'etched', confirmedAt: at })
    expect(only(confirmCause(site, ID, null, at))).toMatchObject({ confirmedCause: null, confirmedAt: null })
    expect(removeCheck(site, ID).glassChecks).toEqual([])
    expect(removeCheck(site, uuid())).toBe(site)
  })

  it('opens a check from a file once, however often it is opened, and puts the later state in its place', () => {
    const check = only(pickMachine(begun(), ID, uuid()))
    const home = siteOf({ machines: [washer] })
    const once = takeCheck(home, check)
    expect(takeCheck(once, check)).toEqual(once)
    expect(once.glassChecks[0]?.machineId).toBeNull()
    const later = { ...check, machineId: washer.id, seen: ['grey'] }
    expect(takeCheck(once, later).glassChecks).toEqual([later])
  })

  it('edits a weight, brings one back, and brings all back', () => {
    const key = weightKey('beads', 'grease')
    const edited = setGlassWeight(setGlassWeight(DEFAULT_SETTINGS, key, '2'), priorKey('etched'), '0.1')
    expect(edited.glassWeights).toHaveLength(2)
    expect(edited.glassWeights.every((row) => isUsable(row.key, row.value))).toBe(true)
    expect(setGlassWeight(edited, key, '1').glassWeights).toHaveLength(2)
    expect(setGlassWeight(edited, key, null).glassWeights).toEqual([
      { key: priorKey('etched'), value: '0.1' },
    ])
    expect(resetGlassWeights(edited).glassWeights).toEqual([])
  })
})
