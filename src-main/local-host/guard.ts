import { TOKEN_HEADER } from './session'

/** A request as it came in, before anything of it is believed. */
export interface Facts {
  readonly method: string
  readonly path: string
  /** names and values in turn, as received; a header sent twice is there twice */
  readonly rawHeaders: readonly string[]
  /** `127.0.0.1:<port>` */
  readonly ownHost: string
}

export type Route =
  { readonly kind: 'file' } | { readonly kind: 'session' } | { readonly kind: 'rpc'; readonly method: string }

export type Verdict =
  | { readonly pass: true; readonly route: Route; readonly token: string | null }
  | { readonly pass: false; readonly status: number; readonly why: string; readonly allow?: string }

type Refusal = Extract<Verdict, { readonly pass: false }>

const refuse = (status: number, why: string): Refusal => ({ pass: false, status, why })

/**
 * Everything about a request that can be judged without its body. Against: a page rebinding its name to this address
 * (Host), other pages in the same browser (Origin, fetch metadata, the custom header, no CORS), plain forms (type).
 */
export function inspect({ method, path, rawHeaders, ownHost }: Facts): Verdict {
  const headers = collect(rawHeaders)
  if (headers === null) return refuse(400, 'a header stands twice')
  if (headers['host'] !== ownHost) return refuse(421, 'the Host header is not this host')

  const origin = headers['origin']
  if (origin !== undefined && origin !== `http://${ownHost}`) return refuse(403, 'the Origin is another page')
  const route = routeOf(path)
  const site = headers['sec-fetch-site']
  const isPage = route.kind === 'file' && (path === '/' || path === '/index.html')
  if (site !== undefined && site !== 'same-origin' && !(site === 'none' && isPage))
    return refuse(403, 'the request comes from another page')

  if (route.kind === 'file')
    return method === 'GET' || method === 'HEAD'
      ? { pass: true, route, token: null }
      : { ...refuse(405, 'files are only read'), allow: 'GET, HEAD' }
  if (method !== 'POST') return { ...refuse(405, 'calls are only posted'), allow: 'POST' }
  if (origin === undefined) return refuse(403, 'a call without an Origin')
  if (!/^application\/json(?:;\s*charset=utf-8)?$/i.test(headers['content-type'] ?? ''))
    return refuse(415, 'calls are JSON')
  return { pass: true, route, token: headers[TOKEN_HEADER] ?? null }
}

function routeOf(path: string): Route {
  if (path === '/session') return { kind: 'session' }
  return path.startsWith('/rpc/') ? { kind: 'rpc', method: path.slice('/rpc/'.length) } : { kind: 'file' }
}

/** Headers that decide something; two of one name would leave open which one counts. */
const DECIDING: ReadonlySet<string> = new Set([
  'host',
  'origin',
  'sec-fetch-site',
  'content-type',
  'content-length',
  TOKEN_HEADER,
])

function collect(rawHeaders: readonly string[]): Readonly<Record<string, string>> | null {
  const found: Record<string, string> = {}
  for (let index = 0; index < rawHeaders.length; index += 2) {
    const name = (rawHeaders[index] ?? '').toLowerCase()
    if (!DECIDING.has(name)) continue
    if (Object.hasOwn(found, name)) return null
    found[name] = rawHeaders[index + 1] ?? ''
  }
  return found
}
