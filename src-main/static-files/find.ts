import type { Manifest, StaticFile } from './manifest'

export type Found =
  { readonly status: 200; readonly file: StaticFile } | { readonly status: 400 | 404; readonly file: null }

/**
 * The file a raw request path names: exactly one of the manifest, `/` for the page. Nothing is decoded or normalised;
 * a path that would need it is refused as such.
 */
export function findFile(manifest: Manifest, path: string): Found {
  // eslint-disable-next-line no-control-regex -- control signs are what is looked for
  const odd = !path.startsWith('/') || path.startsWith('//') || /[%\\\u0000-\u001f\u007f]|\.\./.test(path)
  if (odd) return { status: 400, file: null }
  const file = manifest.get(path === '/' ? '/index.html' : path)
  return file === undefined ? { status: 404, file: null } : { status: 200, file }
}
