import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL, fileURLToPath } from 'node:url'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { difference } from '#core/documents/changes'
import { good, removeFolder, tempFolder } from '../../contract/program'
import { siteWithClosedVisit } from '../../contract/sample-site'
import { needBuild, startBuilt } from '../launch/built-program'
import { connect } from '../torture/client'

beforeAll(needBuild, 180_000)

let folder = ''
beforeEach(() => {
  folder = tempFolder()
})
afterEach(() => {
  delete process.env['NODE_OPTIONS']
  delete process.env['NO_WAY_OUT']
  removeFolder(folder)
})

const guard = pathToFileURL(fileURLToPath(new URL('./no-way-out.mjs', import.meta.url))).href
const attempts = (): string => join(folder, 'attempts.txt')
function shutIn(): void {
  process.env['NODE_OPTIONS'] = `--import ${guard}`
  process.env['NO_WAY_OUT'] = attempts()
}

describe('connections outward', () => {
  it.each([
    ['fetch', 'await fetch("http://127.0.0.1:59999/")'],
    ['a bare socket', '(await import("node:net")).connect(9, "127.0.0.1")'],
    ['https', '(await import("node:https")).get("https://127.0.0.1:9/")'],
    ['a name looked up', '(await import("node:dns")).lookup("example.invalid", () => {})'],
    ['another program', '(await import("node:child_process")).spawn("true")'],
  ])('would be noticed by this test: %s', (_what, code) => {
    shutIn()
    const run = spawnSync(process.execPath, ['--input-type=module', '-e', code], { encoding: 'utf8' })
    expect(run.status).not.toBe(0)
    expect(readFileSync(attempts(), 'utf8')).toMatch(/^(?:connect|lookup|spawn) /)
  })

  it('are never tried by the built host: demo, edits, export, import, copies, the team’s folder, portfolio', async () => {
    shutIn()
    mkdirSync(join(folder, 'shared'))
    const host = await startBuilt(join(folder, 'data'), ['--shared', join(folder, 'shared')])
    const call = await connect(host)
    const { ids } = await good(call('demo.add', {}))
    const made = siteWithClosedVisit().site
    await good(call('site.create', { site: made }))
    const { site, revision: base } = await good(call('site.open', { id: made.id }))
    const changes = difference(site, { ...site, notes: 'https://example.com/ in a note' })
    await good(call('site.edit', { id: made.id, base, changes }))
    const { text } = await good(call('site.export', { id: made.id }))
    await good(call('site.import', { text, choice: 'keep-both' }))
    await good(call('shared.publish', { id: made.id }))
    await good(call('shared.list', {}))
    await good(call('sites.list', {}))
    await call('portfolio.progress', { begin: true })
    await new Promise((resolve) => setTimeout(resolve, 1_500))
    await good(call('backups.list', { document: ids[0] ?? '' }))
    await good(call('site.remove', { id: made.id }))
    await good(call('site.restore', { id: made.id }))
    host.child.kill('SIGTERM')
    expect(await host.ended).toBe(0)
    expect(existsSync(attempts()) ? readFileSync(attempts(), 'utf8') : '').toBe('')
  })
})
