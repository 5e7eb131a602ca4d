import { randomUUID } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { isDeepStrictEqual } from 'node:util'
import type { Call } from '#core/contract/contract'
import { difference } from '#core/documents/changes'
import type { Site } from '#core/records/index'
import { good, removeFolder, tempFolder } from '../../contract/program'
import { site } from '../../contract/sample-site'
import { startBuilt } from '../launch/built-program'
import { connect } from './client'

export interface Weight {
  readonly megabytes: number
  readonly handles: number
}

export interface Life {
  readonly hours: number
  readonly before: Weight
  readonly after: Weight
  readonly sameAtTheEnd: boolean
  readonly exit: number | string | null
}

/** Linux proc(5): resident set in kB, and the open files of a process. */
const weigh = (processId: number): Weight => ({
  megabytes: Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${processId}/status`, 'utf8'))?.[1]) / 1024,
  handles: readdirSync(`/proc/${processId}/fd`).length,
})

interface State {
  readonly site: Site
  readonly revision: number
}

/** What an hour with the program asks of its host: an edit every half minute, and as many looks, exports and misses. */
async function hour(call: Call, start: State): Promise<State> {
  let { site: current, revision } = start
  for (let edit = 0; edit < 120; edit += 1) {
    const next = { ...current, notes: `note ${edit} `.repeat(1 + (edit % 50)) }
    const changes = difference(current, next)
    ;({ revision } = await good(call('site.edit', { id: next.id, base: revision, changes })))
    current = next
    await good(call('sites.list', {}))
    await good(call('site.export', { id: next.id }))
    await call('site.open', { id: randomUUID() })
  }
  return { site: current, revision }
}

/** The built host under hours of use, run through as fast as it answers; weighed after it has warmed up, and at the end. */
export async function liveFor(hours: number): Promise<Life> {
  const folder = tempFolder()
  try {
    const started = await startBuilt(folder)
    const call = await connect(started)
    const made = site()
    const { revision } = await good(call('site.create', { site: made }))
    let state: State = { site: made, revision }
    for (let warming = 0; warming < 4; warming += 1) state = await hour(call, state)
    const processId = started.child.pid ?? 0
    const before = weigh(processId)
    for (let passed = 0; passed < hours; passed += 1) state = await hour(call, state)
    const after = weigh(processId)
    const { site: kept } = await good(call('site.open', { id: made.id }))
    started.child.kill('SIGTERM')
    return {
      hours,
      before,
      after,
      sameAtTheEnd: isDeepStrictEqual(kept, state.site),
      exit: await started.ended,
    }
  } finally {
    removeFolder(folder)
  }
}
