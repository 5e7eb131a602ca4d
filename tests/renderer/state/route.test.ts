import { describe, expect, it } from 'vitest'
import { parseRoute, routeHash, type Route } from '#renderer/state/route.ts'

const siteId = '7f6b8a52-1111-4c1b-a7d4-2f51c7a0e101'
const visitId = '0d6b8a52-2222-4c1b-a7d4-2f51c7a0e101'

describe('addresses', () => {
  const routes: readonly Route[] = [
    { screen: 'sites' },
    { screen: 'site', siteId },
    { screen: 'visit', siteId, visitId },
    { screen: 'report', siteId, visitId },
    { screen: 'trend', siteId },
    { screen: 'spend', siteId },
    { screen: 'setup', siteId },
    { screen: 'glass', siteId },
    { screen: 'kitchen', siteId },
    { screen: 'portfolio' },
    { screen: 'products' },
    { screen: 'instruments' },
    { screen: 'settings' },
  ]
  it.each(routes)('$screen comes back from its address', (route) => {
    expect(parseRoute(routeHash(route))).toEqual(route)
    expect(parseRoute(`${routeHash(route)}?from=list`)).toEqual(route)
  })

  it.each(['', '#', '#/'])('%j is the list of sites', (hash) => {
    expect(parseRoute(hash)).toEqual({ screen: 'sites' })
  })

  it.each(['#/site/../settings', '#/site/1', '#/nowhere', `#/site/${siteId}/visit`, '#start=abc'])(
    '%s leads nowhere',
    (hash) => {
      expect(parseRoute(hash)).toEqual({ screen: 'nowhere' })
    },
  )
})
