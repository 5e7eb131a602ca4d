import { apply } from '../documents/changes'
import { closedVisitsKept } from '../documents/closed-visits'
import { check } from '../documents/decode'
import { site as siteSchema } from '../documents/site-schema'
import { chain, fail, ok } from '../outcome'
import type { Site } from '../records'
import type { Service } from './service'
import { siteDocument, siteName } from './site-document'

/**
 * Applies changes to the revision they were made on. The whole result is checked before anything is written, closed
 * visits stay closed, and a window that works on an older revision is told so instead of overwriting the other's edit.
 */
export const editSite: Service<'site.edit'> =
  ({ documents, clock }) =>
  async ({ id, base, changes }) => {
    const opened = await documents.open(siteName(id))
    if (!opened.ok) return opened
    const before = opened.value.document.site
    if (opened.value.revision !== base)
      return fail({ code: 'document-changed-elsewhere', document: before.name })
    const applied = apply(before, changes)
    if (applied === null)
      return fail({ code: 'bad-request', place: 'changes', reason: 'do not fit this site' })
    const checked = check({ schema: siteSchema }, applied.document)
    if (!checked.ok) return checked
    if (checked.value.id !== before.id)
      return fail({ code: 'bad-request', place: 'id', reason: 'stays as it is' })
    // what was applied shares every untouched visit with `before`, so untouched ones need no look
    const kept = closedVisitsKept(before, applied.document as Site)
    if (!kept.ok) return kept
    return chain(await documents.write(siteName(id), siteDocument(checked.value), base), ({ revision }) =>
      ok({ revision, savedAt: clock.now() }),
    )
  }
