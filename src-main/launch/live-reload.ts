import type { Manifest } from '../static-files/manifest'

const SCRIPT = `
let seen = null
setInterval(async () => {
  const reply = await fetch('/dev-build.txt').catch(() => null)
  if (reply === null || !reply.ok) return
  const build = await reply.text()
  if (seen !== null && seen !== build) location.reload()
  seen = build
}, 500)
`

/** The page with one more script, which asks for the number of the build and reloads when it changes. */
export function withReload(manifest: Manifest, build: number): Manifest {
  const files = new Map(manifest)
  const page = manifest.get('/index.html')
  if (page === undefined) return manifest
  const html = page.bytes
    .toString()
    .replace('</head>', '<script type="module" src="/dev-reload.js"></script></head>')
  files.set('/index.html', { ...page, bytes: Buffer.from(html) })
  files.set('/dev-reload.js', { type: 'text/javascript; charset=utf-8', bytes: Buffer.from(SCRIPT) })
  files.set('/dev-build.txt', { type: 'text/plain; charset=utf-8', bytes: Buffer.from(String(build)) })
  return files
}
