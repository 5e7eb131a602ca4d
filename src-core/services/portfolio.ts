import type { Services } from '../contract/contract'
import type { Ports } from '../contract/ports'
import { ok } from '../outcome'
import { openWhole } from './library'

/** What all sites use and cost. The library of the moment is looked up where a round begins. */
export const portfolioServices = ({
  documents,
  portfolio,
}: Ports): Pick<Services, 'portfolio.rows' | 'portfolio.stop'> => ({
  'portfolio.rows': async (ask) => {
    if (!ask.begin) return portfolio.rows(ask, null)
    const library = await openWhole(documents)
    return library.ok ? portfolio.rows(ask, library.value) : library
  },
  'portfolio.stop': async () => {
    await portfolio.stop()
    return ok({ stopped: true })
  },
})
