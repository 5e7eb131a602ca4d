import { backCloses } from './back-closes'
import { parseRoute, routeHash, type Route } from './route'

/** Follows the address bar. One per window. */
export class Router {
  route: Route = $state.raw({ screen: 'sites' })

  constructor(private readonly window: Pick<Window, 'addEventListener'> & { readonly location: Location }) {
    this.route = parseRoute(window.location.hash)
    window.addEventListener('hashchange', () => {
      this.route = parseRoute(this.window.location.hash)
    })
  }

  go(route: Route): void {
    backCloses.whenSettled(() => {
      this.window.location.hash = routeHash(route)
    })
  }
}
