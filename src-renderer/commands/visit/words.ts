import type { Advice, Id, Site } from '#core/records/index'
import { changeOpenVisit, replaceOne, without, type AtVisit } from './open-visit'

/** Who is advised what, as it will stand on the report. */
export const addAdvice = (site: Site, at: AtVisit, advice: Advice): Site =>
  advice.text.trim() === ''
    ? site
    : changeOpenVisit(site, at.visitId, (visit) => ({
        ...visit,
        advice: [...visit.advice, { ...advice, text: advice.text.trim() }],
      }))

export const editAdvice = (
  site: Site,
  at: AtVisit & { readonly adviceId: Id },
  change: Partial<Omit<Advice, 'id'>>,
): Site =>
  changeOpenVisit(site, at.visitId, (visit) => {
    const advice = replaceOne(
      visit.advice,
      (row) => row.id === at.adviceId,
      (row) => ({ ...row, ...change }),
    )
    return advice === visit.advice ? visit : { ...visit, advice }
  })

export const removeAdvice = (site: Site, at: AtVisit & { readonly adviceId: Id }): Site =>
  changeOpenVisit(site, at.visitId, (visit) => {
    const advice = without(visit.advice, (row) => row.id === at.adviceId)
    return advice === visit.advice ? visit : { ...visit, advice }
  })

/** The rep's own notes of the visit. */
export const setNotes = (site: Site, at: AtVisit, notes: string): Site =>
  changeOpenVisit(site, at.visitId, (visit) => (visit.notes === notes ? visit : { ...visit, notes }))
