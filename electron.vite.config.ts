import { fileURLToPath } from 'node:url'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'electron-vite'

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      rollupOptions: {
        input: {
          electron: at('src-main/electron/main.ts'),
          'local-host': at('src-main/local-host/main.ts'),
          worksheet: at('src-main/worksheet/main.ts'),
          demo: at('src-main/demo/main.ts'),
        },
        output: { format: 'es', entryFileNames: '[name].js' },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
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
      rollupOptions: { input: at('src-renderer/index.html') },
    },
    plugins: [svelte()],
  },
})
