import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { readManifest } from '#main/static-files/manifest'
import { removeFolder, tempFolder } from '../../contract/program'

let folder = ''
beforeEach(() => {
  folder = tempFolder()
})
afterEach(() => removeFolder(folder))

it('the files that are served are those of the built page by their kind: no source, no source map, no folder, nothing unknown', () => {
  mkdirSync(join(folder, 'page', 'assets', 'folder.js'), { recursive: true })
  const names = [
    'index.html',
    'assets/main.js',
    'assets/main.js.map',
    'assets/main.ts',
    'assets/x.svelte',
    '.env',
  ]
  for (const name of [...names, 'assets/font.woff2', 'assets/secret', 'assets/key.pem'])
    writeFileSync(join(folder, 'page', name), 'x')
  writeFileSync(join(folder, 'outside.pem'), 'x')
  symlinkSync(join(folder, 'outside.pem'), join(folder, 'page', 'assets', 'link.pem'))
  expect([...readManifest(join(folder, 'page')).keys()].toSorted()).toEqual([
    '/assets/font.woff2',
    '/assets/main.js',
    '/index.html',
  ])
})
