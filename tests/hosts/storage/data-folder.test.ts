import { chmodSync, mkdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, expect, it } from 'vitest'
import { FOLDERS, prepareDataFolder } from '#main/storage/data-folder'
import { removeFolder, tempFolder } from '../../contract/program'

const folder = tempFolder()
afterEach(() => removeFolder(folder))

it.skipIf(process.platform === 'win32')(
  'a data folder that others could look into, made by hand or by an unpacker, is closed to them at the start',
  () => {
    const root = join(folder, 'data')
    mkdirSync(join(root, 'sites'), { recursive: true })
    for (const path of [root, join(root, 'sites')]) chmodSync(path, 0o777)
    prepareDataFolder(root)
    for (const path of [root, ...FOLDERS.map((name) => join(root, name))])
      expect([path, statSync(path).mode & 0o777]).toEqual([path, 0o700])
  },
)
