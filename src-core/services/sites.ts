import { check } from '../documents/decode'
import { site as siteSchema } from '../documents/site-schema'
import { chain, ok } from '../outcome'
import type { Service } from './service'
import { siteDocument, siteName } from './site-document'

export const listSites: Service<'sites.list'> =
  ({ documents }) =>
  async () =>
    chain(await documents.listSites(), (listed) => {
      const sites = listed.filter((one) => one.state !== 'waiting')
      return ok({ sites, waiting: listed.length - sites.length })
    })

export const listRemoved: Service<'sites.removed'> =
  ({ documents }) =>
  async () =>
    chain(await documents.listRemoved(), (sites) => ok({ sites }))

export const openSite: Service<'site.open'> =
  ({ documents }) =>
  async ({ id }) =>
    chain(await documents.open(siteName(id)), ({ document, revision }) =>
      ok({ site: document.site, revision }),
    )

export const createSite: Service<'site.create'> =
  ({ documents, clock }) =>
  async ({ site }) => {
    const checked = check({ schema: siteSchema }, site)
    if (!checked.ok) return checked
    return chain(await documents.create(siteName(site.id), siteDocument(checked.value)), ({ revision }) =>
      ok({ revision, savedAt: clock.now() }),
    )
  }

export const removeSite: Service<'site.remove'> =
  ({ documents }) =>
  async ({ id }) =>
    chain(await documents.remove(siteName(id)), () => ok({ removed: true as const }))

export const restoreSite: Service<'site.restore'> =
  ({ documents }) =>
  async ({ id }) =>
    chain(await documents.restore(siteName(id)), ({ revision }) => ok({ revision }))

export const recoverSite: Service<'site.recover'> =
  ({ documents }) =>
  async ({ id }) =>
    chain(await documents.recover(siteName(id)), ({ revision }) => ok({ revision }))
