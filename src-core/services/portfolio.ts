import type { Services } from '../contract/contract'
import type { Ports } from '../contract/ports'
import { all, chain, ok, type Outcome } from '../outcome'
import type { Library } from '../worksheet/site-row'
import { openOrEmpty } from './library'

/** What all sites use and cost. The library of the moment is looked up where a round begins. */
export const portfolioServices = ({
  documents,
  portfolio,
}: Ports): Pick<Services, 'portfolio.rows' | 'portfolio.stop'> => ({
  'portfolio.rows': async (ask) => {
    if (!ask.begin) return portfolio.rows(ask, null)
    const library = await openAll(documents)
    return library.ok ? portfolio.rows(ask, library.value) : library
  },
  'portfolio.stop': async () => {
    await portfolio.stop()
    return ok({ stopped: true })
  },
})

async function openAll(documents: Ports['documents']): Promise<Outcome<Library>> {
  const products = await openOrEmpty(documents, 'products')
  const instruments = await openOrEmpty(documents, 'instruments')
  const settings = await openOrEmpty(documents, 'settings')
  return chain(all([products, instruments, settings]), ([p, i, s]) =>
    ok({
      products: p.document.products,
      instruments: i.document.instruments,
      settings: s.document.settings,
    }),
  )
}
