import { ipcMain, type IpcMainInvokeEvent, type WebContents } from 'electron'
import { channelOf, METHODS } from '#core/contract/methods'
import type { Dispatch } from '../dispatch'
import { isOwnPage } from './origin'

/**
 * The only importer of ipcMain. One channel per method; a sender that is not the top frame of a window of ours, showing
 * our page, is refused with a reason.
 */
export function serveCalls(dispatch: Dispatch, isOurWindow: (contents: WebContents) => boolean): void {
  for (const method of METHODS)
    ipcMain.handle(channelOf(method), (event, input: unknown) => {
      const refusal = refusalOf(event, isOurWindow)
      if (refusal !== null) throw new Error(`refused: ${refusal}`)
      return dispatch(method, input)
    })
}

export function refusalOf(
  event: Pick<IpcMainInvokeEvent, 'sender' | 'senderFrame'>,
  isOurWindow: (contents: WebContents) => boolean,
): string | null {
  const { sender, senderFrame } = event
  if (senderFrame === null) return 'the frame has gone'
  if (sender.isDestroyed()) return 'the window has gone'
  if (!isOurWindow(sender)) return 'not a window of this program'
  if (senderFrame.parent !== null) return 'not the top frame'
  if (!isOwnPage(senderFrame.url)) return 'not the page of this program'
  return null
}
