import { homedir } from 'node:os'
import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { defaultDataFolder } from './storage/data-folder'

/** What can be said on the command line of either host. Nothing is read from the environment but where data belongs. */
export interface HostOptions {
  readonly dataFolder: string
  readonly sharedFolder: string | null
  /** one line for another program to read, instead of one for a person */
  readonly json: boolean
  /** stop when standard input ends, because whoever started this has gone */
  readonly withParent: boolean
}

export const HOST_FLAGS = {
  data: { type: 'string' },
  shared: { type: 'string' },
  json: { type: 'boolean' },
  'with-parent': { type: 'boolean' },
} as const

/** The options, or the sentence that says what is wrong with them. */
export function parseHostOptions(args: readonly string[]): HostOptions | string {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: HOST_FLAGS,
      strict: true,
      allowPositionals: false,
    })
    return {
      dataFolder: resolve(values.data ?? defaultDataFolder(process.platform, homedir(), process.env)),
      sharedFolder: values.shared === undefined ? null : resolve(values.shared),
      json: values.json ?? false,
      withParent: values['with-parent'] ?? false,
    }
  } catch (error) {
    return `${reasonOf(error)}. Options: --data FOLDER, --shared FOLDER.`
  }
}

export const reasonOf = (error: unknown): string =>
  error instanceof Error ? (error.message.split('\n')[0] ?? '').slice(0, 200) : String(error)

/** How a host ends when it cannot start. */
export const EXIT = { failed: 1, badOptions: 2, inUse: 3 } as const
