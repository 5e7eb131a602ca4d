import type * as Electron from 'electron'
import { vi } from 'vitest'
import type { Method } from '#core/contract/contract'
import type { Outcome } from '#core/outcome'
import * as fake from '../hosts/electron/fake-electron'
import { asCall, removeFolder, startProgram, tempFolder } from './program'
import { contractSuite } from './suite'

vi.mock('electron', () => import('../hosts/electron/fake-electron'))
const { serveCalls } = await import('#main/electron/ipc')
await import('#main/preload/preload')

type Bridge = Readonly<Record<string, (input: unknown) => Promise<unknown>>>

// The preload script's object, the channels and the handlers of the desktop host, with a stand-in for the two processes
// between them: what passes is cloned as Electron clones it, so a value that cannot be cloned fails here.
contractSuite('over the channels of the desktop window', async () => {
  const folder = tempFolder()
  const { program } = startProgram(folder)
  const contents = new fake.FakeContents()
  fake.handlers.clear()
  serveCalls(program.dispatch, (sender) => (sender as unknown) === contents)
  fake.wire.send = async (channel, input) => {
    const event = { sender: contents, senderFrame: { url: 'app://dosewright/', parent: null } }
    const handler = fake.handlers.get(channel)
    if (handler === undefined) throw new Error(`no handler for ${channel}`)
    const answer = handler(event as unknown as Electron.IpcMainInvokeEvent, structuredClone(input))
    return structuredClone(await answer)
  }
  const bridge = fake.exposed.get('dosewright') as Bridge
  const raw = async (method: string, input: unknown): Promise<Outcome<unknown>> => {
    const ask = Object.hasOwn(bridge, method) ? bridge[method] : undefined
    if (ask === undefined) return { ok: false, problem: { code: 'unknown-method', method } }
    return (await ask(input)) as Outcome<unknown>
  }
  return {
    call: asCall((method: Method, input) => raw(method, input)),
    raw,
    stop: async () => {
      program.close()
      removeFolder(folder)
    },
  }
})
