import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { SiteFile } from '#core/documents/site-schema'
import { computeWorksheet } from '#core/worksheet/compute'
import type { PumpState } from '#core/worksheet/types'
import { nextSteps } from '#renderer/screens/site/next-steps.ts'
import { machineFacts } from '#renderer/screens/site/pump-cards.ts'

const url = new URL('../../../assets/demo/lantern-lane-cafe.json', import.meta.url)
const file = JSON.parse(readFileSync(url, 'utf8')) as SiteFile
const today = '2026-11-25'
const facts = machineFacts(
  file.site,
  computeWorksheet({ ...file, settings: null, asOf: today }),
  file.products,
)

/** What comes next, had the last visit left its pumps like this. */
const saidOf = (state: PumpState): string => {
  const machines = facts.map(({ machine, pumps }) => ({
    machine,
    pumps: pumps.map((pump) => ({
      ...pump,
      last: pump.last === null ? null : { ...pump.last, found: { ...pump.last.found, state } },
    })),
  }))
  return nextSteps(file.site, machines, file.products, today)
    .map(({ text }) => text)
    .join('\n')
}

describe('what comes next at a site', () => {
  it('names the pumps left outside, and those whose runs told nothing', () => {
    expect(saidOf('proved-out')).toContain('Rinse aid pump: was left outside its window. Test and adjust it.')
    expect(saidOf('cannot-tell')).toContain('Rinse aid pump: its last runs do not tell. Time it again.')
    expect(saidOf('proved-in')).not.toContain('Rinse aid pump')
  })
})
