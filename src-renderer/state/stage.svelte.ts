import type { Component } from 'svelte'
import type { Problem } from '#core/problem'
import { announcer } from './announcer.svelte'
import { loadScreen } from '../screens/screens'
import { routeSite, type Route } from './route'
import { Session } from './session.svelte'
import type { SiteSession } from './site-session.svelte'
import type { Workspace } from './workspace.svelte'

export type Shown =
  | { readonly kind: 'loading' }
  | { readonly kind: 'problem'; readonly problem: Problem; readonly route: Route }
  | {
      readonly kind: 'screen'
      readonly route: Route
      readonly screen: Component<Record<string, unknown>>
      readonly session: Session
    }

/** Brings the screen of a route on, with the session it works in. Edits of a site left behind are sent on the way out. */
export class Stage {
  shown: Shown = $state.raw({ kind: 'loading' })
  readonly #library: Session
  #site: SiteSession | null = null
  #wanted: Route | null = null

  constructor(private readonly workspace: Workspace) {
    this.#library = new Session(workspace)
  }

  /** The session on show; the library's while nothing else is. */
  get session(): Session {
    return this.shown.kind === 'screen' ? this.shown.session : this.#library
  }

  get siteSession(): SiteSession | null {
    return isSiteSession(this.session) ? this.session : null
  }

  async show(route: Route): Promise<void> {
    this.#wanted = route
    announcer.passOn()
    this.workspace.history.seal()
    void this.workspace.flush()
    if (route.screen === 'nowhere') return this.#fail(route, { code: 'not-found', what: 'page' })
    const [screen, session] = await Promise.all([loadScreen(route.screen), this.#sessionFor(route)])
    if (this.#wanted !== route) return
    if ('code' in session) return this.#fail(route, session)
    if (screen === null) return this.#fail(route, { code: 'unavailable', what: route.screen })
    this.shown = { kind: 'screen', route, screen, session }
  }

  #fail(route: Route, problem: Problem): void {
    this.shown = { kind: 'problem', problem, route }
  }

  async #sessionFor(route: Route): Promise<Session | Problem> {
    const id = routeSite(route)
    if (id === null) return this.#library
    // the calculations come with the first site, so that the list of sites does not wait for them
    const [{ SiteSession }, document] = await Promise.all([
      import('./site-session.svelte'),
      this.workspace.openSite(id),
    ])
    if (!document.ok) return document.problem
    if (this.#site?.document !== document.value) this.#site = new SiteSession(this.workspace, document.value)
    return this.#site
  }
}

const isSiteSession = (session: Session): session is SiteSession => 'site' in session
