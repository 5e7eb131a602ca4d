import { writeFile } from 'node:fs/promises'
import type { BrowserWindow, Dialog } from 'electron'
import { ok, type Outcome } from '#core/outcome'
import { safeFileName } from '#core/services/file-name'
import { notSaved } from '../storage/not-saved'

type PrintedWindow = { readonly webContents: Pick<BrowserWindow['webContents'], 'printToPDF'> }

/** Prints what the window shows in its print layout and asks the person where to keep it. */
export async function savePdf(
  window: PrintedWindow,
  ask: (suggested: string) => ReturnType<Dialog['showSaveDialog']>,
  title: string,
  sheet: 'A4' | 'Letter',
): Promise<Outcome<{ saved: boolean }>> {
  const pdf = await window.webContents.printToPDF({
    pageSize: sheet,
    printBackground: true,
    preferCSSPageSize: true,
    generateTaggedPDF: true,
  })
  const { canceled, filePath } = await ask(`${safeFileName(title)}.pdf`)
  if (canceled || filePath === '') return ok({ saved: false })
  try {
    await writeFile(filePath, pdf)
    return ok({ saved: true })
  } catch (error) {
    return notSaved(error)
  }
}
