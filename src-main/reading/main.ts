import { parentPort, workerData } from 'node:worker_threads'
import { Worker } from './job'
import type { Reply, Request } from './thread'

// built as out/main/reading.js; runs as a thread of either host
const { root } = workerData as { readonly root: string }
const worker = new Worker(root)

const send = (reply: Reply): void => {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread has no origin
  parentPort?.postMessage(reply)
}

parentPort?.on('message', ({ number, job }: Request) => {
  try {
    send({ number, value: worker.answer(job) })
  } catch (error) {
    send({ number, failed: error instanceof Error ? error.message : String(error) })
  }
})
