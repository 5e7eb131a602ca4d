import { askedName, isAskedName, triedName, type FirstPage } from '#core/glass/check-findings'
import type { CauseId } from '#core/glass/causes'
import { PICTURE_IDS, PICTURES, type PictureId } from '#core/glass/pictures'
import { NOTICED, type NoticedId } from '#core/glass/signs'
import type { TestId } from '#core/glass/tests'
import type { GlassAnswer, GlassCheck, Id, Instant, Settings, Site } from '#core/records/index'
import { changeById, removeById } from './lists'

/** Edits of the glass check. All but the last two touch nothing of a site but its list of checks. */
const change = (site: Site, id: Id, step: (check: GlassCheck) => GlassCheck): Site => {
  const glassChecks = changeById(site.glassChecks, id, step)
  return glassChecks === site.glassChecks ? site : { ...site, glassChecks }
}

export function startCheck(
  site: Site,
  stamp: { readonly id: Id; readonly at: Instant; readonly machineId: Id | null },
): Site {
  const check: GlassCheck = {
    ...stamp,
    seen: [],
    ware: [],
    spread: 'unknown',
    since: 'unknown',
    answers: [],
    confirmedCause: null,
    confirmedAt: null,
  }
  return { ...site, glassChecks: [...site.glassChecks, check] }
}

/** A page or a test was asked: its answers, and after them the mark that it was asked. */
const asked = (
  check: GlassCheck,
  page: TestId | FirstPage,
  answers: readonly GlassAnswer[],
): readonly GlassAnswer[] => [...check.answers, ...answers, { evidence: askedName(page), answer: 'yes' }]

/** `all`: nothing else was seen, so the other pictures count as not seen; else they stay open. */
export const pickPictures = (site: Site, id: Id, seen: readonly PictureId[], all: boolean): Site =>
  change(site, id, (check) => {
    const signs = new Set<string>(seen.map((picture) => PICTURES[picture]))
    const others = [...new Set<string>(PICTURE_IDS.map((picture) => PICTURES[picture]))]
      .filter((sign) => !signs.has(sign))
      .map((evidence): GlassAnswer => ({ evidence, answer: 'no' }))
    return { ...check, seen, answers: asked(check, 'pictures', all ? others : []) }
  })

export const pickMachine = (site: Site, id: Id, machineId: Id | null): Site =>
  change(site, id, (check) => ({ ...check, machineId, answers: asked(check, 'machine', []) }))

export const pickWare = (site: Site, id: Id, ware: GlassCheck['ware']): Site =>
  change(site, id, (check) => ({ ...check, ware, answers: asked(check, 'ware', []) }))

export const pickSpread = (site: Site, id: Id, spread: GlassCheck['spread']): Site =>
  change(site, id, (check) => ({ ...check, spread, answers: asked(check, 'where', []) }))

export const pickSince = (site: Site, id: Id, since: GlassCheck['since']): Site =>
  change(site, id, (check) => ({ ...check, since, answers: asked(check, 'since', []) }))

/** `all`: the signs not picked are not there; else they stay open. */
export const pickNoticed = (site: Site, id: Id, noticed: readonly NoticedId[], all: boolean): Site =>
  change(site, id, (check) => ({
    ...check,
    answers: asked(
      check,
      'notice',
      NOTICED.flatMap((evidence): readonly GlassAnswer[] =>
        noticed.includes(evidence) ? [{ evidence, answer: 'yes' }] : all ? [{ evidence, answer: 'no' }] : [],
      ),
    ),
  }))

export const answerTest = (site: Site, id: Id, test: TestId, answers: readonly GlassAnswer[]): Site =>
  change(site, id, (check) => ({ ...check, answers: asked(check, test, answers) }))

/** Takes the last page, test or cure back, with its answers. */
export const takeLastBack = (site: Site, id: Id): Site =>
  change(site, id, (check) => {
    const marks = check.answers.flatMap(({ evidence }, index) => (isAskedName(evidence) ? [index] : []))
    const last = marks.at(-1)
    if (last === undefined) return check
    if (last < check.answers.length - 1) return { ...check, answers: check.answers.slice(0, last + 1) }
    const page = check.answers[last]?.evidence
    return {
      ...check,
      ...(page === askedName('machine') ? { machineId: null } : {}),
      ...(page === askedName('pictures') ? { seen: [] } : {}),
      ...(page === askedName('ware') ? { ware: [] } : {}),
      ...(page === askedName('where') ? { spread: 'unknown' as const } : {}),
      ...(page === askedName('since') ? { since: 'unknown' as const } : {}),
      answers: check.answers.slice(0, (marks.at(-2) ?? -1) + 1),
    }
  })

/** The cure of a cause was tried: it helped or it did not. */
export const recordCure = (site: Site, id: Id, cause: CauseId, helped: boolean): Site =>
  change(site, id, (check) => ({
    ...check,
    answers: [...check.answers, { evidence: triedName(cause), answer: helped ? 'yes' : 'no' }],
  }))

/** The rep says what it was; null takes the word back. */
export const confirmCause = (site: Site, id: Id, cause: CauseId | null, at: Instant): Site =>
  change(site, id, (check) => ({
    ...check,
    confirmedCause: cause,
    confirmedAt: cause === null ? null : at,
  }))

export const removeCheck = (site: Site, id: Id): Site => {
  const glassChecks = removeById(site.glassChecks, id)
  return glassChecks === site.glassChecks ? site : { ...site, glassChecks }
}

/** A check that came as a file: new, or in place of the same check as it was before. A machine not here is left out. */
export function takeCheck(site: Site, check: GlassCheck): Site {
  const known = site.machines.some((machine) => machine.id === check.machineId)
  const taken = known ? check : { ...check, machineId: null }
  const here = site.glassChecks.some((other) => other.id === check.id)
  return {
    ...site,
    glassChecks: here
      ? changeById(site.glassChecks, check.id, () => taken)
      : [...site.glassChecks, taken].toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)),
  }
}

/** Replaces a prior or a weight; null brings the shipped one back. */
export function setGlassWeight(settings: Settings, key: string, value: string | null): Settings {
  const others = settings.glassWeights.filter((row) => row.key !== key)
  return { ...settings, glassWeights: value === null ? others : [...others, { key, value }] }
}

export const resetGlassWeights = (settings: Settings): Settings =>
  settings.glassWeights.length === 0 ? settings : { ...settings, glassWeights: [] }
