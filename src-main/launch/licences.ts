import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

// `npm run licences`: what ships with the program and under which licence, as a table
const root = fileURLToPath(new URL('../..', import.meta.url))

export interface Shipped {
  readonly name: string
  readonly version: string
  readonly licence: string
}

/** The runtime packages npm would install without development ones; the licence as each package states it. */
export function shippedPackages(): readonly Shipped[] {
  const listed = spawnSync('npm', ['ls', '--omit=dev', '--all', '--parseable'], {
    cwd: root,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  })
  const folders = listed.stdout.split('\n').filter((line) => line.includes('node_modules'))
  return [...new Set(folders)].map(readPackage).toSorted((a, b) => (a.name < b.name ? -1 : 1))
}

function readPackage(folder: string): Shipped {
  const file = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    readonly name: string
    readonly version: string
    readonly license?: string
  }
  return { name: file.name, version: file.version, licence: file.license ?? 'not stated' }
}

/** Built into the page from packages that only development installs. */
const BUILT_IN = ['svelte', 'clsx', '@fontsource-variable/inter']

export const builtIn = (): readonly Shipped[] =>
  BUILT_IN.map((name) => readPackage(join(root, 'node_modules', ...name.split('/'))))

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const { name, version, licence } of [...builtIn(), ...shippedPackages()])
    console.log(`${name} ${version}: ${licence}`)
