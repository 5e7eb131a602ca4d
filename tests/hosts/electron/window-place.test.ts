import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type * as Electron from 'electron'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { windowPlace } from '#main/electron/window-place'
import { removeFolder, tempFolder } from '../../contract/program'

vi.mock('electron', () => import('./fake-electron'))
vi.mock('electron-store', async () => {
  const { default: Conf } = await import('conf')
  return {
    default: class extends Conf {
      constructor({ name, ...options }: { readonly name: string; readonly cwd: string }) {
        super({ ...options, configName: name })
      }
    },
  }
})

let folder = ''
beforeEach(() => {
  folder = tempFolder()
})
afterEach(() => removeFolder(folder))

const SCREENS: readonly Electron.Rectangle[] = [{ x: 0, y: 0, width: 1920, height: 1040 }]
const kept = (text: string): Electron.Rectangle | null => {
  writeFileSync(join(folder, 'window.json'), text)
  return windowPlace(folder).last(SCREENS)
}

it('the window opens where it stood', () => {
  const place = { x: 50, y: 60, width: 900, height: 700 }
  expect(kept(JSON.stringify({ place }))).toEqual(place)
})

it.each([
  ['on a screen that is gone', '{"place":{"x":4000,"y":60,"width":900,"height":700}}'],
  ['with its title bar above the screen', '{"place":{"x":50,"y":-300,"width":900,"height":700}}'],
  ['too small to work in', '{"place":{"x":50,"y":60,"width":90,"height":70}}'],
  ['without numbers', '{"place":{"x":"a","y":null}}'],
  ['as no object', '{"place":7}'],
  ['in a damaged file', '{"pla'],
  ['in an empty file', ''],
])('a place %s is forgotten', (_what, text) => {
  expect(kept(text)).toBeNull()
})
