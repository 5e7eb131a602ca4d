import { readFileSync } from 'node:fs'

/** Who holds a data folder. `startedAt` tells two processes with the same id apart. */
export interface LockOwner {
  readonly processId: number
  readonly startedAt: string
  readonly host: string
  readonly since: string
  /** different for every time a folder is taken */
  readonly token: string
}

/** When a process began, as the system counts it; null where the system does not say, or there is no such process. */
export function processStart(processId: number): string | null {
  try {
    // Linux proc(5), /proc/pid/stat: field 3 is the state, field 22 the start in clock ticks since boot. The name in
    // field 2 may hold spaces and brackets, so fields are counted from its last bracket.
    const stat = readFileSync(`/proc/${processId}/stat`, 'utf8')
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
    if (fields[0] === 'Z' || fields[0] === 'X') return null
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()
    return `${boot}:${fields[19] ?? ''}`
  } catch {
    return null
  }
}

export function isAlive(processId: number): boolean {
  try {
    process.kill(processId, 0)
    return true
  } catch (error) {
    // it exists, but belongs to somebody else
    return typeof error === 'object' && error !== null && 'code' in error && error.code === 'EPERM'
  }
}

export function parseOwner(text: string): LockOwner | null {
  try {
    const value: unknown = JSON.parse(text)
    if (typeof value !== 'object' || value === null) return null
    const { processId, startedAt, host, since, token } = value as Readonly<Record<string, unknown>>
    if (typeof processId !== 'number' || !Number.isInteger(processId) || processId <= 0) return null
    if (typeof startedAt !== 'string' || typeof host !== 'string') return null
    if (typeof since !== 'string' || typeof token !== 'string') return null
    return { processId, startedAt, host, since, token }
  } catch {
    return null
  }
}
