import type { Services } from '../contract/contract'
import type { DocumentName, Ports } from '../contract/ports'
import { compareSites, type SitePart } from '../documents/compare-sites'
import type { Documents } from '../documents/formats'
import { same } from '../documents/same'
import { summarizeSite } from '../documents/summarize-site'
import { chain, ok, type Outcome } from '../outcome'

type BackupMethod = 'backups.list' | 'backups.preview' | 'backups.restore'

/** Going back to an earlier day: which copies there are, what would change, and the step itself. */
export const backupServices = ({ documents, clock }: Ports): Pick<Services, BackupMethod> => ({
  'backups.list': async ({ document }) =>
    chain(await documents.listBackups(nameOf(document)), (copies) => ok({ copies })),

  'backups.preview': async ({ document, copy }) => {
    const name = nameOf(document)
    const opened = await documents.open(name)
    const now = opened.ok ? opened.value.document : null
    return chain(await documents.readBackup(name, copy), (then) => ok(preview(now, then)))
  },

  'backups.restore': async ({ document, copy }) => {
    const name = nameOf(document)
    const then = await documents.readBackup(name, copy)
    if (!then.ok) return then
    return chain(await putBack(documents, name, then.value), (revision) =>
      ok({ revision, savedAt: clock.now() }),
    )
  },
})

async function putBack(
  documents: Ports['documents'],
  name: DocumentName,
  then: Documents[keyof Documents],
): Promise<Outcome<number>> {
  const opened = await documents.open(name)
  if (!opened.ok) {
    // nothing readable stands in the way: damaged files are set aside, missing ones are missing
    if (opened.problem.code !== 'not-found' && opened.problem.code !== 'document-damaged') return opened
    return chain(await documents.create(name, then), ({ revision }) => ok(revision))
  }
  const copied = await documents.takeBackup(name)
  if (!copied.ok) return copied
  return chain(await documents.write(name, then, opened.value.revision), ({ revision }) => ok(revision))
}

const nameOf = (key: string): DocumentName =>
  key === 'products' || key === 'instruments' || key === 'settings'
    ? { kind: key }
    : { kind: 'site', id: key }

type AnyDocument = Documents[keyof Documents]

function preview(now: AnyDocument | null, then: AnyDocument) {
  const mine = now !== null && 'site' in now ? now.site : null
  const theirs = 'site' in then ? then.site : null
  const differences: readonly SitePart[] =
    mine !== null && theirs !== null ? compareSites(mine, theirs) : libraryDifferences(now, then)
  return {
    mine: mine === null ? null : summarizeSite(mine),
    theirs: theirs === null ? null : summarizeSite(theirs),
    differences,
  }
}

/** For library documents one line says whether anything would change at all. */
const libraryDifferences = (now: AnyDocument | null, then: AnyDocument): readonly SitePart[] =>
  now === null || 'site' in then || same(now, then)
    ? []
    : [{ place: then.format, what: 'site', name: then.format, state: 'differs', changed: [], asks: false }]
