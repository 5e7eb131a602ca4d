import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { getCurrentFuseWire, FuseV1Options } from '@electron/fuses'
import { expect, test } from '@playwright/test'

// The packaged program, after `npm run package -- --dir`: its fuses as they were burnt, and that it starts and stops.
const root = fileURLToPath(new URL('../../..', import.meta.url))
const program = join(root, 'dist', 'linux-unpacked', 'dosewright')

const ENABLE = '1'.charCodeAt(0)
const DISABLE = '0'.charCodeAt(0)

if (existsSync(program)) {
  test('its fuses are as the table says', async () => {
    const wire = await getCurrentFuseWire(program)
    expect(wire).toMatchObject({
      [FuseV1Options.RunAsNode]: DISABLE,
      [FuseV1Options.EnableCookieEncryption]: ENABLE,
      [FuseV1Options.EnableNodeOptionsEnvironmentVariable]: DISABLE,
      [FuseV1Options.EnableNodeCliInspectArguments]: DISABLE,
      [FuseV1Options.EnableEmbeddedAsarIntegrityValidation]: ENABLE,
      [FuseV1Options.OnlyLoadAppFromAsar]: ENABLE,
      [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot]: DISABLE,
      [FuseV1Options.GrantFileProtocolExtraPrivileges]: DISABLE,
    })
  })

  test('it starts, takes its data folder, and gives it back when told to stop', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'dosewright-package-'))
    const lock = join(folder, 'data', 'lock.json')
    const child = spawn(program, [
      `--data=${join(folder, 'data')}`,
      `--user-data-dir=${join(folder, 'window')}`,
    ])
    await expect.poll(() => existsSync(lock), { timeout: 20_000 }).toBe(true)
    child.kill('SIGTERM')
    const code = await new Promise((resolve) => child.once('exit', resolve))
    expect(code).toBe(0)
    expect(existsSync(lock)).toBe(false)
    rmSync(folder, { recursive: true, force: true })
  })
}
