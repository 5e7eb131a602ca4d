import { readFileSync } from 'node:fs'
import { decode } from '#core/documents/decode'
import { encode } from '#core/documents/encode'
import { sentence } from '#core/messages/sentence'
import { removeFolder, startProgram, tempFolder } from '../../contract/program'
import { listing } from '../storage/files'
import { mutated } from './mutate'
import { seeded } from './random'

export interface MutationTally {
  mutations: number
  accepted: number
  refused: number
  imported: number
  /** processor time of the slowest, ms: what it costs, not how busy the machine is */
  slowest: number
  readonly faults: string[]
}

const FIXTURES = ['site-v1-full.json', 'site-v2-full.json', 'site-v2-new.json'].map((name) =>
  readFileSync(new URL(`../../fixtures/documents/${name}`, import.meta.url), 'utf8'),
)

/**
 * Damaged site files through decode and import: none crashes, none takes a second, a refused one is explained and
 * writes nothing, an accepted one comes back as it went in.
 */
export async function mutateAndImport(mutations: number, seed: number): Promise<MutationTally> {
  const random = seeded(seed)
  const folder = tempFolder()
  const { call, program, logged } = startProgram(folder)
  const tally: MutationTally = { mutations: 0, accepted: 0, refused: 0, imported: 0, slowest: 0, faults: [] }
  let before = listing(folder)
  try {
    for (; tally.mutations < mutations && tally.faults.length === 0; tally.mutations += 1) {
      const text = mutated(FIXTURES[Math.floor(random() * FIXTURES.length)] ?? '', random)
      const began = process.cpuUsage()
      const decoded = decode('site', text)
      if (!decoded.ok) {
        tally.refused += 1
        const told = sentence(decoded.problem)
        if (!/^["A-Z].{20,400}\.$/s.test(told)) tally.faults.push(`no good sentence: ${told}`)
      } else {
        tally.accepted += 1
        const again = decode('site', encode('site', decoded.value.document))
        if (!again.ok || encode('site', again.value.document) !== encode('site', decoded.value.document))
          tally.faults.push(`does not come back as it went in: ${text.slice(0, 200)}`)
      }
      // the way through the whole program costs more; every fourth takes it
      if (tally.mutations % 4 === 0) {
        const imported = await call('site.import', { text, choice: 'take-theirs' })
        if (imported.ok !== decoded.ok)
          tally.faults.push(`decode and import disagree: ${JSON.stringify(imported)}`)
        const after = listing(folder)
        if (imported.ok) tally.imported += 1
        else if (after.join() !== before.join())
          tally.faults.push(`a refused file wrote something: ${after.join()}`)
        before = after
      }
      const { user, system } = process.cpuUsage(began)
      tally.slowest = Math.max(tally.slowest, (user + system) / 1000)
    }
    if (logged.length > 0) tally.faults.push(`a bug: ${logged[0]}`)
    return tally
  } finally {
    program.close()
    removeFolder(folder)
  }
}
