import { constants, copyFileSync, existsSync, linkSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { randomUUID } from 'node:crypto'

/** Copies over `target` in one step: readers see the old file or the new one. A clone where the file system can. */
export function copyInPlace(source: string, target: string): void {
  const half = `${target}.tmp-${randomUUID()}`
  try {
    copyFileSync(source, half, constants.COPYFILE_FICLONE)
    renameSync(half, target)
  } catch (error) {
    rmSync(half, { force: true })
    throw error
  }
}

/** Writes a whole file over `target` in one step. Not flushed: for what stands in for a file that is. */
export function writeInPlace(bytes: Buffer, target: string): void {
  const half = `${target}.tmp-${randomUUID()}`
  try {
    writeFileSync(half, bytes, { mode: 0o600 })
    renameSync(half, target)
  } catch (error) {
    rmSync(half, { force: true })
    throw error
  }
}

/** Puts a second name of `source` over `target`; takes no disk space, so it works on a full disk. */
export function linkInPlace(source: string, target: string): void {
  const half = `${target}.tmp-${randomUUID()}`
  linkSync(source, half)
  renameSync(half, target)
}

/** Renames to the first free of `name`, `name-2`, ... and returns the path taken. Never over a file that is there. */
export function moveAside(source: string, target: (suffix: string) => string): string {
  for (let number = 1; ; number += 1) {
    const path = target(number === 1 ? '' : `-${number}`)
    if (existsSync(path)) continue
    renameSync(source, path)
    return path
  }
}

/** An instant as part of a file name. */
export const stamp = (instant: string): string => instant.replaceAll(/[-:]/g, '').replace(/\.\d+/, '')
