/** The three faces of the spend screen; kept in the address, so that a reload and a link find them. */
export const VIEWS = [
  { name: 'cost', label: 'Use and cost' },
  { name: 'stock', label: 'Stock and orders' },
  { name: 'what-if', label: 'What if' },
] as const

export type View = (typeof VIEWS)[number]['name']

export const readView = (hash: string): View =>
  VIEWS.find(({ name }) => hash.split('?')[1] === name)?.name ?? 'cost'

/** Writes the view into the address without leaving the page. */
export function writeView(window: Pick<Window, 'history' | 'location'>, view: View): void {
  const [page = ''] = window.location.hash.split('?')
  window.history.replaceState(window.history.state, '', view === 'cost' ? page : `${page}?${view}`)
}
