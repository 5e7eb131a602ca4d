import { readdirSync, readFileSync, statSync } from 'node:fs'
import { extname, join, sep } from 'node:path'

export interface StaticFile {
  readonly type: string
  readonly bytes: Buffer
}

/** The files of the page by their path, `/index.html`. Nothing that is not in here is ever served. */
export type Manifest = ReadonlyMap<string, StaticFile>

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
}

/** Reads the built page once, so that requests touch no disk. Kinds without a known type, source maps too, stay out. */
export function readManifest(folder: string): Manifest {
  const files = new Map<string, StaticFile>()
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    const type = TYPES[extname(name)]
    const path = join(folder, name)
    if (type === undefined || !statSync(path).isFile()) continue
    files.set(`/${name.split(sep).join('/')}`, { type, bytes: readFileSync(path) })
  }
  return files
}
