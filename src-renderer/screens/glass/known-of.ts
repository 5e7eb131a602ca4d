import type { KnownInput } from '#core/glass/known-types'
import type { Machine } from '#core/records/index'
import { knownInput } from '#core/worksheet/glass-of'
import type { SiteSession } from '../../state/site-session.svelte'

/** What the record can tell about a machine; null where the machine is not known. */
export const knownOf = (session: SiteSession, machine: Machine | null): KnownInput | null =>
  machine === null ? null : knownInput(session.worksheet, session.site, machine)
