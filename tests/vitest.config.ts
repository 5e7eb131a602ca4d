import { fileURLToPath } from 'node:url'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  plugins: [svelte()],
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/e2e/**', 'tests/bench/**', 'node_modules/**'],
    typecheck: { enabled: true, include: ['tests/types/**/*.test-d.ts'], tsconfig: 'tests/tsconfig.json' },
    // a slow machine is no failure: speed is measured by the benchmarks, never here
    testTimeout: 120_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 30_000 } },
    reporters: ['default'],
  },
})
