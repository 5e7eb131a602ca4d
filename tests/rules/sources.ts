import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../..', import.meta.url))

export interface Source {
  readonly path: string
  readonly text: string
}

/** Every file of ours below a folder whose name ends as given. */
export function sources(folder: string, endings: readonly string[]): readonly Source[] {
  return readdirSync(`${root}${folder}`, { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((path) => endings.some((ending) => path.endsWith(ending)))
    .toSorted()
    .map((path) => ({ path, text: readFileSync(`${root}${path}`, 'utf8') }))
}

/** Places where a pattern stands, as `path:line: text`. */
export function places(files: readonly Source[], pattern: RegExp): readonly string[] {
  return files.flatMap(({ path, text }) =>
    text
      .split('\n')
      .flatMap((line, index) => (pattern.test(line) ? [`${path}:${String(index + 1)}: ${line.trim()}`] : [])),
  )
}

/** The same files without their comment lines, line numbers kept. */
export const codeOf = (files: readonly Source[]): readonly Source[] =>
  files.map(({ path, text }) => ({ path, text: text.replaceAll(/^\s*(?:\*|\/\*|\/\/).*$/gmu, '') }))
