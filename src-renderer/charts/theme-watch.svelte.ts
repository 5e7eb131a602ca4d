import { createSubscriber } from 'svelte/reactivity'

const QUERIES = ['(prefers-color-scheme: dark)', 'print']

const subscribe = createSubscriber((update) => {
  const observer = new MutationObserver(update)
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] })
  const lists = QUERIES.map((query) => window.matchMedia(query))
  for (const list of lists) list.addEventListener('change', update)
  return () => {
    observer.disconnect()
    for (const list of lists) list.removeEventListener('change', update)
  }
})

/** Read inside an effect: it runs again when the theme changes, or the page goes to paper. */
export const followTheme = (): void => subscribe()
