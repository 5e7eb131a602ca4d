import type { Protocol } from 'electron'
import { findFile } from '../static-files/find'
import { SECURITY_HEADERS } from '../static-files/headers'
import type { Manifest } from '../static-files/manifest'
import { HOST, SCHEME } from './origin'

/** Before the app is ready: the scheme counts as a web origin, with secure contexts and without a way round the policy. */
export const registerScheme = (protocol: Pick<Protocol, 'registerSchemesAsPrivileged'>): void =>
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, bypassCSP: false, supportFetchAPI: true } },
  ])

/** Answers the page's own files and nothing else. */
export const serveApp = (protocol: Pick<Protocol, 'handle'>, manifest: Manifest): void =>
  protocol.handle(SCHEME, (request) => answer(manifest, request))

export function answer(manifest: Manifest, request: Pick<Request, 'method' | 'url'>): Response {
  if (request.method !== 'GET' && request.method !== 'HEAD') return refusal(405)
  const path = rawPath(request.url)
  if (path === null) return refusal(400)
  const found = findFile(manifest, path)
  if (found.file === null) return refusal(found.status)
  const { type, bytes } = found.file
  return new Response(request.method === 'HEAD' ? null : new Uint8Array(bytes), {
    status: 200,
    headers: { ...SECURITY_HEADERS, 'Content-Type': type, 'Content-Length': String(bytes.length) },
  })
}

/** What stands after the host, undecoded and unresolved, so that `..` is seen and not tidied away; null: not our host. */
function rawPath(url: string): string | null {
  const start = `${SCHEME}://${HOST}`
  if (!url.startsWith(`${start}/`)) return url === start ? '/' : null
  return url.slice(start.length)
}

const refusal = (status: 400 | 404 | 405): Response =>
  new Response('Not here.', {
    status,
    headers: { ...SECURITY_HEADERS, 'Content-Type': 'text/plain; charset=utf-8' },
  })
