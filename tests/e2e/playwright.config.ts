import { defineConfig } from '@playwright/test'
import { findChromium } from '../support/chromium'
import { LAUNCH_FLAGS } from './support/flags'

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results/e2e',
  fullyParallel: false,
  workers: 2,
  timeout: 400_000,
  expect: { timeout: 30_000 },
  forbidOnly: true,
  // a shared machine may stand still for seconds; what needed it is named at the end, and none is silent about it
  retries: process.env['CI'] === undefined ? 0 : 1,
  reporter: process.env['PLAYWRIGHT_JSON_OUTPUT_FILE'] === undefined ? 'list' : [['list'], ['json']],
  use: {
    viewport: { width: 1366, height: 768 },
    locale: 'en-GB',
    timezoneId: 'Europe/Dublin',
    trace: 'retain-on-failure',
    launchOptions: { executablePath: findChromium() ?? '', args: [...LAUNCH_FLAGS] },
  },
  projects: [
    { name: 'chromium', testIgnore: 'electron/**' },
    { name: 'electron', testMatch: 'electron/**/*.spec.ts' },
  ],
})
