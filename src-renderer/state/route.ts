import type { Id } from '#core/records/index'

/** Where the person is. Every place has an address, so that back, forward and reload work. */
export type Route =
  | { readonly screen: 'sites' }
  | { readonly screen: 'site'; readonly siteId: Id }
  | { readonly screen: 'visit'; readonly siteId: Id; readonly visitId: Id }
  | { readonly screen: 'report'; readonly siteId: Id; readonly visitId: Id }
  | { readonly screen: 'trend' | 'spend' | 'setup' | 'glass' | 'kitchen'; readonly siteId: Id }
  | { readonly screen: 'portfolio' | 'products' | 'instruments' | 'settings' }
  | { readonly screen: 'nowhere' }

export type Screen = Route['screen']

const ID = '([0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12})'
const SITE = new RegExp(`^/site/${ID}(?:/(trend|spend|setup|glass|kitchen))?$`, 'u')
const VISIT = new RegExp(`^/site/${ID}/visit/${ID}(/report)?$`, 'u')
const PLAIN = /^\/(portfolio|products|instruments|settings)$/u

export function parseRoute(hash: string): Route {
  const path = (hash.replace(/^#/u, '').split('?')[0] ?? '').replace(/(?<=.)\/$/u, '')
  if (path === '' || path === '/') return { screen: 'sites' }
  const plain = PLAIN.exec(path)?.[1]
  if (plain !== undefined) return { screen: plain as 'portfolio' | 'products' | 'instruments' | 'settings' }
  const visit = VISIT.exec(path)
  if (visit?.[1] !== undefined && visit[2] !== undefined)
    return { screen: visit[3] === undefined ? 'visit' : 'report', siteId: visit[1], visitId: visit[2] }
  const site = SITE.exec(path)
  if (site?.[1] !== undefined)
    return {
      screen: (site[2] ?? 'site') as 'site' | 'trend' | 'spend' | 'setup' | 'glass' | 'kitchen',
      siteId: site[1],
    }
  return { screen: 'nowhere' }
}

export function routeHash(route: Route): string {
  switch (route.screen) {
    case 'sites':
    case 'nowhere':
      return '#/'
    case 'site':
      return `#/site/${route.siteId}`
    case 'visit':
      return `#/site/${route.siteId}/visit/${route.visitId}`
    case 'report':
      return `#/site/${route.siteId}/visit/${route.visitId}/report`
    case 'trend':
    case 'spend':
    case 'setup':
    case 'glass':
    case 'kitchen':
      return `#/site/${route.siteId}/${route.screen}`
    default:
      return `#/${route.screen}`
  }
}

/** The site a route belongs to, if any. */
export const routeSite = (route: Route): Id | null => ('siteId' in route ? route.siteId : null)
