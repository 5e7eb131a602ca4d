import { filesOf } from '#core/documents/archive'
import type { ArchiveReply } from './opening-archive'

// runs as a thread of the window: an archive may hold 200 MB

const send = (reply: ArchiveReply): void => {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread has no origin
  postMessage(reply)
}

async function tellFilesOf(archive: Blob): Promise<void> {
  const files = filesOf(await archive.text())
  if (!files.ok) return send({ kind: 'refused', problem: files.problem })
  // one at a time, so that the window takes each in without stopping
  for (const file of files.value) send({ kind: 'file', text: file, of: files.value.length })
  send({ kind: 'end' })
}

addEventListener('message', (event: MessageEvent<Blob>) => void tellFilesOf(event.data))
