/** The one address of the page in the desktop window. */
export const SCHEME = 'app'
export const HOST = 'dosewright'
export const PAGE = `${SCHEME}://${HOST}/`

/** Whether a URL is of the page itself. Compared part by part: look-alikes share their first letters, not their host. */
export function isOwnPage(text: string): boolean {
  const url = parseUrl(text)
  return (
    url !== null &&
    url.protocol === `${SCHEME}:` &&
    url.host === HOST &&
    url.username === '' &&
    url.password === ''
  )
}

export function parseUrl(text: string): URL | null {
  try {
    return new URL(text)
  } catch {
    return null
  }
}
