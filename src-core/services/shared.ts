import type { Output, Services } from '../contract/contract'
import type { Ports, SharedFile } from '../contract/ports'
import { compareSites } from '../documents/compare-sites'
import { decode } from '../documents/decode'
import type { SiteFile } from '../documents/site-schema'
import { chain, ok, type Outcome } from '../outcome'
import type { Id } from '../records'
import type { Service } from './service'
import { siteName } from './site-document'
import { compareArrived, exportSite, importArrived, withArrived } from './transfer'

type SharedMethod =
  'shared.describe' | 'shared.choose' | 'shared.list' | 'shared.compare' | 'shared.take' | 'shared.publish'

/** A team through a shared folder: what others put there is offered, what this installation has is put beside it. */
export const sharedServices = (ports: Ports): Pick<Services, SharedMethod> => ({
  'shared.describe': async () => ok(ports.shared.describe()),
  'shared.choose': async () => chain(await ports.shared.choose(), (folder) => ok({ folder })),
  'shared.list': listShared(ports),
  'shared.compare': async ({ file }) => {
    const text = await ports.shared.read(file)
    return text.ok ? withArrived(ports, text.value, (arrived) => compareArrived(ports, arrived)) : text
  },
  'shared.take': async ({ file, ...how }) => {
    const text = await ports.shared.read(file)
    if (!text.ok) return text
    const taken = await withArrived(ports, text.value, async (arrived) => {
      const { id, name } = arrived
      // "leave mine" of a site that is not here, or no longer: it stays away
      const leaves = how.choice === 'keep-mine' && !(await isHere(ports, id))
      return leaves ? ok({ id, name, products: 0, instruments: 0 }) : importArrived(ports, arrived, how)
    })
    if (taken.ok) await ports.shared.markTaken(file)
    return taken
  },
  'shared.publish': async ({ id }) => {
    const exported = await exportSite(ports)({ id })
    if (!exported.ok) return exported
    return chain(await ports.shared.write(id, exported.value.text), (file) => ok({ file }))
  },
})

const readShared = async ({ shared }: Ports, file: string): Promise<Outcome<SiteFile>> =>
  chain(await shared.read(file), (text) => chain(decode('site', text), ({ document }) => ok(document)))

const isHere = async ({ documents }: Ports, id: Id): Promise<boolean> =>
  (await documents.open(siteName(id))).ok

type Incoming = Output<'shared.list'>['incoming'][number]

const listShared: Service<'shared.list'> = (ports) => async () => {
  const files = await ports.shared.list()
  if (!files.ok) return files
  const removed = await ports.documents.listRemoved()
  const gone = new Set(removed.ok ? removed.value.map(({ id }) => id) : [])
  const incoming: Incoming[] = []
  for (const file of files.value) {
    const row = await offer(ports, gone, file)
    if (row !== null) incoming.push(row)
  }
  return ok({ incoming })
}

/** Nothing is offered twice: not what was dealt with, and not what holds no more than is here. */
async function offer(
  ports: Ports,
  gone: ReadonlySet<Id>,
  { file, changedAt, taken }: SharedFile,
): Promise<Incoming | null> {
  if (taken) return null
  const read = await readShared(ports, file)
  if (!read.ok) return { file, id: null, name: file.slice(0, 200), state: 'unreadable', changedAt }
  const { site } = read.value
  const here = await ports.documents.open(siteName(site.id))
  const row = { file, id: site.id, name: site.name, changedAt }
  if (!here.ok) return { ...row, state: gone.has(site.id.toLowerCase()) ? 'removed' : 'new' }
  const mine = here.value.document.site
  const nothingNew = compareSites(mine, site).every(({ state }) => state === 'only-mine')
  return nothingNew ? null : { ...row, state: 'differs' }
}
