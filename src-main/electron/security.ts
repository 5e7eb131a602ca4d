import type { App, Session, WebContents } from 'electron'
import { isOwnPage } from './origin'

/** Items 5 and 12 to 14 of Electron's security checklist, for every window and frame there will ever be. */
export function hardenApp(app: Pick<App, 'on' | 'enableSandbox'>): void {
  app.enableSandbox()
  app.on('web-contents-created', (_event, contents) => hardenContents(contents))
}

/** The page needs no permission, so none is given. */
export function denyPermissions(
  session: Pick<
    Session,
    'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'setDevicePermissionHandler'
  >,
): void {
  session.setPermissionRequestHandler((_contents, _permission, callback) => callback(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
}

/** Nothing leaves the program: any request that is not for the page's own files is stopped. */
export const denyNetwork = (session: Pick<Session, 'webRequest'>): void =>
  session.webRequest.onBeforeRequest((details, callback) => callback({ cancel: !isOwnRequest(details.url) }))

export const isOwnRequest = (url: string): boolean => isOwnPage(url) || url.startsWith('data:image/')

const stay = (event: { readonly url: string; readonly preventDefault: () => void }): void => {
  if (!isOwnPage(event.url)) event.preventDefault()
}

function hardenContents(contents: Pick<WebContents, 'on' | 'setWindowOpenHandler'>): void {
  contents.on('will-navigate', stay)
  contents.on('will-redirect', stay)
  contents.on('will-frame-navigate', stay)
  contents.on('will-attach-webview', (event) => event.preventDefault())
  contents.setWindowOpenHandler(() => ({ action: 'deny' }))
}
