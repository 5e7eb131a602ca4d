import type { MenuItemConstructorOptions } from 'electron'

/** The menu of each system, of its own standard items only; everything of the program itself is on its page. */
export const menuTemplate = (platform: NodeJS.Platform): readonly MenuItemConstructorOptions[] => [
  ...(platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
  { label: 'File', submenu: [platform === 'darwin' ? { role: 'close' } : { role: 'quit' }] },
  // undo and redo belong to the page: in a field they act on the text, elsewhere on the document
  {
    label: 'Edit',
    submenu: [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }],
  },
  {
    label: 'View',
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      { type: 'separator' },
      { role: 'togglefullscreen' },
    ],
  },
  { role: 'windowMenu' },
]
