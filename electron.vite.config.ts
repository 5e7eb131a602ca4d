import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'electron-vite'

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** Each is built as out/main/<name>.js. */
const PROGRAMS = ['electron', 'local-host', 'summary', 'reading', 'worksheet', 'demo'] as const

const STATISTICS = ['normal-cdf', 'normal-quantile', 't-cdf', 't-quantile'].map(
  (name) => `@stdlib/stats-base-dists-${name}`,
)

const GENERATORS = '@stdlib/assert-has-generator-support'

/**
 * A statistics package asks by eval whether the engine has generators. The page's content policy refuses eval, so the
 * answer, which is yes in every engine this program runs in, is given here.
 */
const noEvalProbe = {
  name: 'no-eval-probe',
  enforce: 'pre',
  resolveId: (id: string) => (id === GENERATORS ? `\0${GENERATORS}` : null),
  load: (id: string) => (id === `\0${GENERATORS}` ? 'module.exports = function () { return true }' : null),
} as const

interface Bundle {
  readonly [file: string]: {
    readonly moduleIds?: readonly string[]
    readonly originalFileNames?: readonly string[]
  }
}

/**
 * Writes which packages were put into what was built, each with the text of its licence: their code ships without their
 * folders, and every one of these licences asks for its text to go along.
 */
const licencesOf = (target: string) => ({
  name: `licences-of-${target}`,
  generateBundle(this: { readonly getModuleIds: () => Iterable<string> }, _options: unknown, bundle: Bundle) {
    const sources = [
      ...Object.values(bundle).flatMap((part) => [
        ...(part.moduleIds ?? []),
        ...(part.originalFileNames ?? []),
      ]),
      // style sheets stand in no chunk
      ...[...this.getModuleIds()].filter((id) => /\.css(?:\?|$)/.test(id)),
    ]
    const names = new Set(
      sources.flatMap((id) => /.*[\\/]?node_modules[\\/]((?:@[^\\/]+[\\/])?[^\\/]+)/.exec(id)?.[1] ?? []),
    )
    // one text for all that share it
    const byText = groupBy(
      [...names].map((name) => licenceOf(name.replaceAll('\\', '/'))),
      ({ text }) => text,
    )
    const parts = [...byText].map(
      ([text, some]) =>
        `${some
          .map(({ title }) => `## ${title}`)
          .toSorted()
          .join('\n')}\n\n${text}\n`,
    )
    mkdirSync(at('out/licences'), { recursive: true })
    writeFileSync(at(`out/licences/${target}.txt`), parts.toSorted().join('\n'))
  },
})

function groupBy<T>(items: readonly T[], key: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>()
  for (const item of items) groups.set(key(item), [...(groups.get(key(item)) ?? []), item])
  return groups
}

function licenceOf(name: string): { readonly title: string; readonly text: string } {
  const folder = at(`node_modules/${name}`)
  const { version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    readonly version: string
    readonly license?: string
  }
  // a NOTICE file goes along by section 4 (d) of Apache-2.0
  const [licence, notice] = [/^licen[cs]e/i, /^notice/i].map((what) =>
    readdirSync(folder).find((one) => what.test(one)),
  )
  if (licence === undefined) throw new Error(`${name} goes into the build and has no text of its licence`)
  const text = [licence, ...(notice === undefined ? [] : [notice])]
    .map((one) => readFileSync(join(folder, one), 'utf8').replaceAll('\r\n', '\n').trim())
    .join('\n\n')
  return { title: `${name} ${version}: ${license ?? 'not stated'}`, text }
}

export default defineConfig({
  main: {
    plugins: [noEvalProbe, licencesOf('main')],
    build: {
      outDir: 'out/main',
      externalizeDeps: {
        // the demo prints its report with the browser the tests use; that stays a package of the checkout
        include: ['@playwright/test'],
        // a start reads a few files instead of a thousand
        exclude: ['zod', 'decimal.js', 'conf', ...STATISTICS],
      },
      rollupOptions: {
        input: Object.fromEntries(PROGRAMS.map((name) => [name, at(`src-main/${name}/main.ts`)])),
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'parts/[name]-[hash].js' },
      },
    },
  },
  preload: {
    plugins: [licencesOf('preload')],
    build: {
      outDir: 'out/preload',
      // a sandboxed preload script can load nothing but electron, so everything else is put into the one file
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: at('src-main/preload/preload.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: at('src-renderer'),
    build: {
      outDir: at('out/renderer'),
      sourcemap: false,
      minify: true,
      // small files stay files: a data: font or script is what the page's policy refuses
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rollupOptions: { input: at('src-renderer/index.html'), checks: { pluginTimings: false } },
    },
    plugins: [svelte(), noEvalProbe, licencesOf('renderer')],
  },
})
