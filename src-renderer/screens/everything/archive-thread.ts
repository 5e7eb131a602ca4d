import { openArchive } from '#core/documents/archive'
import type { ArchiveReply } from './opening-archive'

// runs as a thread of the window: an archive may hold 200 MB

const send = (reply: ArchiveReply): void => {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread has no origin
  postMessage(reply)
}

async function tellFilesOf(file: Blob): Promise<void> {
  const archive = openArchive(await file.text())
  if (!archive.ok) return send({ kind: 'refused', problem: archive.problem })
  const { sites, removed, settings } = archive.value
  const of = sites.length + removed.length
  // one at a time, so that the window takes each in without stopping
  for (const text of sites) send({ kind: 'site', text, of })
  for (const one of removed) send({ kind: 'removed', ...one, of })
  send({ kind: 'end', settings })
}

addEventListener('message', (event: MessageEvent<Blob>) => void tellFilesOf(event.data))
