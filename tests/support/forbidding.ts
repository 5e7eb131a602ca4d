import { execFileSync } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const isAdministrator = process.getuid?.() === 0

/** Makes a folder one that this process cannot write. Permissions do not bind the administrator; this mark does. */
export function forbidWriting(folder: string): void {
  if (isAdministrator) execFileSync('chattr', ['+i', folder], { stdio: 'ignore' })
  else chmodSync(folder, 0o500)
}

export function allowWriting(folder: string): void {
  if (isAdministrator) execFileSync('chattr', ['-i', folder], { stdio: 'ignore' })
  else chmodSync(folder, 0o700)
}

/** Whether it can be done here: not every disk knows the mark. */
export const canForbid = ((): boolean => {
  if (process.platform === 'win32') return false
  const probe = mkdtempSync(join(tmpdir(), 'dosewright-'))
  try {
    forbidWriting(probe)
    allowWriting(probe)
    return true
  } catch {
    return false
  } finally {
    rmSync(probe, { recursive: true, force: true })
  }
})()
