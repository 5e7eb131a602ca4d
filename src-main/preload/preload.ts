import { contextBridge, ipcRenderer } from 'electron'
import { channelOf, METHODS, type Method } from '#core/contract/methods'

type Ask = (input: unknown) => Promise<unknown>

/** One function per method and nothing else: no general way to send, no Electron object, plain data in and out. */
const bridge = Object.freeze(
  Object.fromEntries(
    METHODS.map((method): [Method, Ask] => [
      method,
      (input) => ipcRenderer.invoke(channelOf(method), input) as Promise<unknown>,
    ]),
  ) as Record<Method, Ask>,
)

contextBridge.exposeInMainWorld('dosewright', bridge)
