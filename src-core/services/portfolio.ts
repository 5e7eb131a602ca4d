import type { Services } from '../contract/contract'
import type { Ports } from '../contract/ports'
import { ok } from '../outcome'
import { openWhole } from './library'

type PortfolioMethod = Extract<keyof Services, `portfolio.${string}`>

/** What all sites use and cost. The library of the moment is looked up where a round begins. */
export const portfolioServices = ({ documents, portfolio }: Ports): Pick<Services, PortfolioMethod> => ({
  'portfolio.progress': async ({ begin }) => {
    if (!begin) return ok(await portfolio.progress(null))
    const library = await openWhole(documents)
    return library.ok ? ok(await portfolio.progress(library.value)) : library
  },
  'portfolio.view': async (ask) => ok(await portfolio.view(ask)),
  'portfolio.rows': async (ask) => ok(await portfolio.rows(ask)),
  'portfolio.sums': async (ask) => ok(await portfolio.sums(ask)),
  'portfolio.orders': async (ask) => ok(await portfolio.orders(ask)),
  'portfolio.table': async (ask) => ok(await portfolio.table(ask)),
  'portfolio.stop': async () => {
    await portfolio.stop()
    return ok({ stopped: true })
  },
})
