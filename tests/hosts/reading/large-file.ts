import { encode } from '#core/documents/encode'
import type { SiteFile } from '#core/documents/site-schema'
import { bigSite } from '../../bench/big-site'

/** A site of ten thousand visits, each with one series of one run: what no site reaches, in one file. */
export function tenThousandVisits(): SiteFile {
  const file = bigSite(10_000, 1)
  const visits = file.site.visits.map((visit) => ({
    ...visit,
    work: visit.work.slice(0, 1).map((work) => ({ ...work, steps: work.steps.slice(0, 1) })),
  }))
  return { ...file, site: { ...file.site, visits } }
}

export const textOf = (file: SiteFile): string => encode('site', file)
