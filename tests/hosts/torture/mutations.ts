import { readFileSync } from 'node:fs'
import * as fc from 'fast-check'
import { archiveOf } from '#core/documents/archive'
import { encodeGlassFile } from '#core/documents/glass-file'
import { removeFolder, startProgram, tempFolder } from '../../contract/program'
import { damaged, damages } from './mutate'
import { archiveWay, diskWay, glassWay, siteWay, type Way } from './ways'

export interface MutationTally {
  mutations: number
  accepted: number
  refused: number
  /** processor time of the slowest, ms: what it costs, not how busy the machine is */
  slowest: number
  readonly byWay: Record<string, { accepted: number; refused: number }>
  readonly faults: string[]
}

const fixture = (name: string): string =>
  readFileSync(new URL(`../../fixtures/documents/${name}`, import.meta.url), 'utf8')
const LIBRARY = ['products', 'instruments', 'settings'] as const
const SITES = ['site-v1-full.json', 'site-v2-full.json', 'site-v2-new.json'].map(fixture)

/** A whole text by its name, and the way it takes into the program; sites oftener, as they are what travels. */
interface Case {
  readonly way: string
  readonly text: string
}
const casesWith = (glass: string): Readonly<Record<string, Case>> => ({
  ...Object.fromEntries(SITES.map((text, index) => [`site ${index}`, { way: 'site file imported', text }])),
  archive: {
    way: 'archive imported',
    text: archiveOf({
      sites: SITES.slice(1),
      removed: SITES.slice(0, 1).map((text) => ({ removedAt: '2025-03-02T08:00:00.000Z', text })),
      settings: fixture('settings-v1.json'),
    }).join(''),
  },
  'glass check': { way: 'glass check opened', text: glass },
  ...Object.fromEntries(
    LIBRARY.map((kind) => [kind, { way: `${kind} on disk`, text: fixture(`${kind}-v1.json`) }]),
  ),
})

/**
 * Damaged texts of every kind a person can bring in or find on the disk, made by fast-check, each all the way through
 * the program: none crashes, none takes a second, a refused one is explained and writes nothing, an accepted one is
 * there afterwards as it was read. A failure is made as small as it can be.
 */
export async function mutateAndImport(mutations: number, seed: number): Promise<MutationTally> {
  const folder = tempFolder()
  const { call, program, logged } = startProgram(folder)
  const glass = await glassWay(call, SITES[1] ?? '')
  const ways: Readonly<Record<string, Way>> = {
    'site file imported': siteWay(call, folder),
    'archive imported': archiveWay(call, folder),
    'glass check opened': glass.way,
    ...Object.fromEntries(LIBRARY.map((kind) => [`${kind} on disk`, diskWay(kind)])),
  }
  const tally: MutationTally = { mutations: 0, accepted: 0, refused: 0, slowest: 0, byWay: {}, faults: [] }
  const cases = casesWith(encodeGlassFile(glass.siteId, 'Somewhere', glass.check))
  const property = fc.asyncProperty(fc.constantFrom(...Object.keys(cases)), damages, async (name, list) => {
    const { way, text } = cases[name] ?? { way: '', text: '' }
    const given = damaged(text, list)
    const began = process.cpuUsage()
    const accepted = await ways[way]?.(given)
    const { user, system } = process.cpuUsage(began)
    tally.slowest = Math.max(tally.slowest, (user + system) / 1000)
    tally.mutations += 1
    const counts = (tally.byWay[way] ??= { accepted: 0, refused: 0 })
    counts[accepted === true ? 'accepted' : 'refused'] += 1
    tally[accepted === true ? 'accepted' : 'refused'] += 1
    if (logged.length > 0) throw new Error(`a bug: ${logged[0]}`)
  })
  try {
    const run = await fc.check(property, { seed, numRuns: mutations })
    if (run.failed) tally.faults.push(`${String(run.errorInstance)}\n${fc.defaultReportMessage(run) ?? ''}`)
    return tally
  } finally {
    program.close()
    removeFolder(folder)
  }
}
