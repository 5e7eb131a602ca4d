import { fileURLToPath } from 'node:url'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'electron-vite'

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** Each is built as out/main/<name>.js. */
const PROGRAMS = ['electron', 'local-host', 'summary', 'reading', 'worksheet', 'demo'] as const

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

export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      externalizeDeps: {
        // the demo prints its report with the browser the tests use; that stays a package of the checkout
        include: ['@playwright/test'],
        // a start reads a few files instead of 250
        exclude: ['zod', 'decimal.js'],
      },
      rollupOptions: {
        input: Object.fromEntries(PROGRAMS.map((name) => [name, at(`src-main/${name}/main.ts`)])),
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'parts/[name]-[hash].js' },
      },
    },
  },
  preload: {
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
    plugins: [svelte(), noEvalProbe],
  },
})
