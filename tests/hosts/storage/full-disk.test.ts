import { execFile, execFileSync } from 'node:child_process'
import { mkdirSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { site } from '../../contract/sample-site'
import { good, removeFolder, tempFolder } from '../../contract/program'
import { openStore, siteFile } from './files'

const child = fileURLToPath(new URL('./full-disk-child.ts', import.meta.url))

let root = ''
beforeEach(() => {
  root = tempFolder()
})
afterEach(() => removeFolder(root))

const disk = (): string => join(root, 'disk')
const run = (command: string): boolean => {
  try {
    execFileSync('sh', ['-c', command], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}
const hasLimits = run('command -v prlimit')

describe('a disk that takes only part of a file', () => {
  // Linux, setrlimit(2): a write that starts below the size limit is cut short without an error, as on a full disk
  it.runIf(hasLimits)(
    'does not replace a good document: the edit is refused, the last good version stands',
    async () => {
      const { stdout } = await promisify(execFile)('prlimit', [
        '--fsize=16384',
        process.execPath,
        '--import',
        'tsx',
        child,
        root,
      ])
      const result = JSON.parse(stdout) as { readonly id: string }
      expect(result).toMatchObject({
        refused: { ok: false, problem: { code: 'not-saved', reason: 'the disk is full' } },
        kept: true,
        again: true,
      })
      const reread = await good(openStore(root).open({ kind: 'site', id: result.id }))
      expect(reread.document.site.notes).toBe('small again')
      expect(readdirSync(join(root, 'sites')).filter((name) => name.includes('tmp'))).toEqual([])
    },
  )
})

const probe = tempFolder()
const canMount = run(`mount -t tmpfs -o size=64k tmpfs ${probe} && umount ${probe}`)
removeFolder(probe)

describe.runIf(canMount)('a disk of its own', () => {
  beforeEach(() => {
    mkdirSync(disk())
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=128k', 'tmpfs', disk()])
  })
  afterEach(() => {
    execFileSync('umount', [disk()])
  })

  it('that is full: every save is acknowledged and kept, or refused; the document always opens', async () => {
    const made = site()
    const name = { kind: 'site', id: made.id } as const
    const store = openStore(disk())
    let { revision } = await good(store.create(name, siteFile(made)))
    let acknowledged = made
    let refusals = 0
    for (let size = 1; size < 30; size += 1) {
      const next = { ...made, notes: 'n'.repeat(300 * size), timeZone: `z${size}` }
      const many = { ...next, scenarios: scenarios(size) }
      const written = await store.write(name, siteFile(many), revision)
      if (written.ok) {
        revision = written.value.revision
        acknowledged = many
      } else {
        expect(written.problem).toEqual({ code: 'not-saved', reason: 'the disk is full' })
        refusals += 1
      }
      expect((await good(openStore(disk()).open(name))).document.site).toEqual(acknowledged)
    }
    expect(refusals).toBeGreaterThan(0)
    await good(store.write(name, siteFile(made), revision))
  })

  it('that can only be read: documents open, saving says why not', async () => {
    const made = site()
    const name = { kind: 'site', id: made.id } as const
    await good(openStore(disk()).create(name, siteFile(made)))
    const store = openStore(disk())
    const { revision } = await good(store.open(name))
    execFileSync('mount', ['-o', 'remount,ro', disk()])
    expect(await store.write(name, siteFile({ ...made, notes: 'x' }), revision)).toEqual({
      ok: false,
      problem: { code: 'not-saved', reason: 'the disk can only be read' },
    })
    expect((await good(store.open(name))).document.site).toEqual(made)
  })
})

const scenarios = (size: number) =>
  Array.from({ length: size * 10 }, (_, index) => ({
    id: `22222222-0000-4000-8000-${index.toString().padStart(12, '0')}`,
    name: 'What if',
    racksPercent: '100',
    rinseVolumePercent: null,
    changes: [],
  }))
