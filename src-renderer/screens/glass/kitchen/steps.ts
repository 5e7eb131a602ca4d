import { FIRST_PAGES, pagesAsked, type FirstPage } from '#core/glass/check-findings'
import type { Diagnosis } from '#core/glass/diagnose'
import type { NextTest } from '#core/glass/next-test'
import type { GlassCheck, Site } from '#core/records/index'

/** Where an operator stands in a check. */
export type Step =
  | { readonly kind: 'page'; readonly page: FirstPage; readonly number: number }
  | { readonly kind: 'test'; readonly next: NextTest; readonly number: number }
  | { readonly kind: 'result' }
  | { readonly kind: 'cured' }

/** The first pages this site needs: the machine is asked only where there are several. */
export const pagesOf = (site: Site): readonly FirstPage[] =>
  FIRST_PAGES.filter((page) => page !== 'machine' || site.machines.length > 1)

/** As it comes; or the result now; or one more test although there is a result. */
export type Wish = 'as-it-comes' | 'result' | 'more'

/** What comes next: the pages not asked yet, then tests while they help, then the result. */
export function stepOf(site: Site, check: GlassCheck, found: Diagnosis, wish: Wish): Step {
  if (found.cured !== null) return { kind: 'cured' }
  const asked = pagesAsked(check)
  const pages = pagesOf(site)
  const page = pages.find((one) => !asked.includes(one))
  if (page !== undefined) return { kind: 'page', page, number: pages.indexOf(page) + 1 }
  const next = found.next[0]
  return next === undefined || wish === 'result' || (found.enough && wish !== 'more')
    ? { kind: 'result' }
    : { kind: 'test', next, number: found.asked + 1 }
}
