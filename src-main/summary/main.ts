import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { createHash } from 'node:crypto'
import { parentPort, workerData } from 'node:worker_threads'
import { Region } from './region'
import { answer, type Reply, type Request } from './thread'

// built as out/main/summary.js; runs as a thread of either host
const { root, version } = workerData as { readonly root: string; readonly version: string }

// the names of its parts stand in this file and change with what they hold: another build is another program
const build = createHash('sha1')
  .update(readFileSync(fileURLToPath(import.meta.url)))
  .digest('hex')
  .slice(0, 12)

const desk = new Region({ root, program: `${version} ${build}`, now: () => new Date().toISOString() })

const send = (reply: Reply): void => {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread has no origin
  parentPort?.postMessage(reply)
}

parentPort?.on('message', (request: Request) => {
  const { number } = request
  answer(desk, request).then(
    (value) => send({ number, value }),
    (error: unknown) =>
      send({ number, failed: error instanceof Error ? (error.stack ?? error.message) : String(error) }),
  )
})
