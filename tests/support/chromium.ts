import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { findBrowser } from '#main/launch/app-window'

/** A Chromium for the browser tests: one installed on this machine, else Playwright's own where it was fetched. */
export function findChromium(): string | null {
  const installed = findBrowser(process.platform, process.env)
  if (installed !== null) return installed
  const own = chromium.executablePath()
  return existsSync(own) ? own : null
}

/**
 * Finds a Chromium or installs one: Playwright's, else the system's own on Debian as root. Ends with what to do where
 * neither can be had; tests that need a browser are never left out in silence.
 */
export async function ensureChromium(): Promise<string> {
  const found = findChromium()
  if (found !== null) return found
  console.log('No Chromium here: fetching the one Playwright is made for ...')
  run('npx', ['--no-install', 'playwright', 'install', 'chromium'])
  if (findChromium() === null && process.getuid?.() === 0 && existsSync('/etc/debian_version')) {
    console.log('That did not work: installing the system’s chromium ...')
    run('apt-get', ['update', '-q'])
    run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'])
  }
  const now = findChromium()
  if (now === null)
    throw new Error(
      'The tests need a browser of the Chromium family and could not install one. Install chromium (Debian: apt-get install chromium) and run npm test again.',
    )
  return now
}

const run = (program: string, args: readonly string[]): void =>
  void spawnSync(program, [...args], { stdio: 'inherit', timeout: 600_000 })
