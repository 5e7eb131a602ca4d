import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { connect } from 'node:net'
import { join } from 'node:path'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { ROOT } from '#main/launch/built'
import { site } from '../../contract/sample-site'
import { removeFolder, tempFolder } from '../../contract/program'
import { ask } from '../local-host/raw-request'
import { codeOf } from '../local-host/running'
import { needBuild, startBuilt, type Started } from './built-program'

beforeAll(needBuild, 120_000)

let folder = ''
const running: Started[] = []
beforeEach(() => {
  folder = tempFolder()
})
afterEach(() => {
  for (const { child } of running.splice(0)) child.kill('SIGKILL')
  removeFolder(folder)
})

const start = async (args: readonly string[] = []): Promise<Started> => {
  const started = await startBuilt(folder, args)
  running.push(started)
  return started
}

async function tokenOf({ origin, address }: Started): Promise<string> {
  const headers = { origin, 'content-type': 'application/json' }
  const swapped = await ask(origin, {
    method: 'POST',
    path: '/session',
    headers,
    body: JSON.stringify({ code: codeOf(address) }),
  })
  return (JSON.parse(swapped.body) as { readonly token: string }).token
}

async function createSite(started: Started): Promise<string> {
  const { origin } = started
  const headers = {
    origin,
    'content-type': 'application/json',
    'x-dosewright-token': await tokenOf(started),
  }
  const made = site()
  const created = await ask(origin, {
    method: 'POST',
    path: '/rpc/site.create',
    headers,
    body: JSON.stringify({ site: made }),
  })
  expect(JSON.parse(created.body)).toMatchObject({ ok: true })
  return made.id
}

describe('the local window host as a process', () => {
  it('serves the built page, with the policy and nothing inline', async () => {
    const { origin } = await start()
    const page = await ask(origin, {})
    expect(page.status).toBe(200)
    expect(page.body).not.toMatch(/<script(?![^>]*\bsrc=)|\sstyle=|\son\w+=|https?:\/\//)
    const scripts = [...page.body.matchAll(/(?:src|href)="\.?(\/[^"]+)"/g)].map((match) => match[1] ?? '')
    expect(scripts.length).toBeGreaterThan(1)
    for (const path of scripts) expect([path, (await ask(origin, { path })).status]).toEqual([path, 200])
  })

  it.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)(
    '%s: ends with code 0, the lock gone, the data whole',
    async (signal) => {
      const first = await start()
      const id = await createSite(first)
      first.child.kill(signal)
      expect(await first.ended).toBe(0)
      expect(existsSync(join(folder, 'lock.json'))).toBe(false)
      expect(JSON.parse(readFileSync(join(folder, 'sites', `${id}.json`), 'utf8'))).toMatchObject({
        site: { id },
      })
    },
  )

  it('told to stop while a save is half sent: the save gets through, then it ends', async () => {
    const first = await start()
    const { hostname, port, host } = new URL(first.origin)
    const made = site()
    const body = Buffer.from(JSON.stringify({ site: made }))
    const head = [
      'POST /rpc/site.create HTTP/1.1',
      `Host: ${host}`,
      `Origin: ${first.origin}`,
      'Content-Type: application/json',
      `x-dosewright-token: ${await tokenOf(first)}`,
      `Content-Length: ${body.length}`,
      '',
      '',
    ].join('\r\n')
    const socket = connect(Number(port), hostname)
    let reply = ''
    socket.on('data', (data) => (reply += data.toString()))
    const closed = new Promise((resolve) => socket.once('close', resolve))
    socket.write(head)
    socket.write(body.subarray(0, 100))
    await new Promise((resolve) => setTimeout(resolve, 500))
    first.child.kill('SIGTERM')
    await new Promise((resolve) => setTimeout(resolve, 500))
    socket.write(body.subarray(100))
    await closed
    expect(reply).toMatch(/^HTTP\/1\.1 200[^]*"ok":true/)
    expect(await first.ended).toBe(0)
    expect(existsSync(join(folder, 'lock.json'))).toBe(false)
    expect(existsSync(join(folder, 'sites', `${made.id}.json`))).toBe(true)
  })

  it('SIGKILL: the lock it leaves is in nobody’s way', async () => {
    const first = await start()
    const id = await createSite(first)
    first.child.kill('SIGKILL')
    await first.ended
    expect(existsSync(join(folder, 'lock.json'))).toBe(true)
    await start()
    expect(readdirSync(join(folder, 'sites'))).toContain(`${id}.json`)
  })

  it('a second one on the same folder says who has it and ends with code 3', async () => {
    const first = await start()
    const error = await start().catch((reason: unknown) => String(reason))
    expect(error).toMatch(
      new RegExp(`^Error: 3: The data folder is in use .* \\(process ${first.child.pid}, since .*\\)`),
    )
    expect((await ask(first.origin, {})).status).toBe(200)
  })

  it('gives a new address when asked, and voids the one before', async () => {
    const started = await start()
    started.child.stdin?.write('\n')
    const line = await new Promise<string>((resolve) =>
      started.child.stdout?.once('data', (data: Buffer) => resolve(data.toString())),
    )
    const { address } = JSON.parse(line) as { readonly address: string }
    const swap = (code: string): ReturnType<typeof ask> =>
      ask(started.origin, {
        method: 'POST',
        path: '/session',
        headers: { origin: started.origin, 'content-type': 'application/json' },
        body: JSON.stringify({ code }),
      })
    expect((await swap(codeOf(started.address))).status).toBe(401)
    expect((await swap(codeOf(address))).status).toBe(200)
  })

  it('stops when whoever started it is gone', async () => {
    const started = await start(['--with-parent'])
    started.child.stdin?.end()
    expect(await started.ended).toBe(0)
    expect(existsSync(join(folder, 'lock.json'))).toBe(false)
  })
})

const npmStart = (...args: readonly string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', join(ROOT, 'src-main', 'launch', 'start.ts'), ...args], {
    cwd: ROOT,
    encoding: 'utf8',
  })

describe('npm start', () => {
  it('refuses politely with code 3 while another holds the data folder', async () => {
    await start()
    const second = npmStart('--data', folder, '--local', '--no-open')
    expect(second.status).toBe(3)
    expect(second.stdout).toContain('Opening the local window: as asked with --local.')
    expect(second.stderr).toMatch(/^The data folder is in use/)
  })

  it('names its options when it does not know one', () => {
    const wrong = npmStart('--port', '80')
    expect(wrong.status).toBe(2)
    expect(wrong.stderr).toMatch(/--port.* Options: --data FOLDER, --shared FOLDER, --local, --no-open\./)
  })

  it('hands a built program its arguments and hands back its exit code', () => {
    const run = spawnSync(
      process.execPath,
      ['--import', 'tsx', join(ROOT, 'src-main', 'launch', 'run-built.ts'), 'local-host', '--nonsense'],
      { cwd: ROOT, encoding: 'utf8' },
    )
    expect(run.status).toBe(2)
    expect(run.stderr).toContain('--nonsense')
  })
})
