import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { worksheetFile } from '#core/documents/worksheet-schema'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const demo = join(root, 'assets/demo')

function worksheet(...args: readonly string[]): {
  readonly code: number
  readonly out: string
  readonly err: string
} {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'src-main/worksheet/main.ts', ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64_000_000,
  })
  return { code: run.status ?? -1, out: run.stdout, err: run.stderr }
}

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'dosewright-worksheet-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('the headless worksheet', { timeout: 60_000 }, () => {
  it.each(readdirSync(demo))('gives every figure of %s in the published format', (name) => {
    const { code, out } = worksheet(join(demo, name), '--json', '--as-of', '2026-11-25')
    expect(code).toBe(0)
    const parsed = worksheetFile.parse(JSON.parse(out))
    expect(parsed.visits.length).toBeGreaterThanOrEqual(8)
    for (const visit of parsed.visits)
      for (const pump of visit.pumps) {
        expect(pump.asLeft?.flow).toHaveProperty('expanded')
        expect(pump.asLeft?.dose).toHaveProperty('unit', 'mL/rack')
        expect(pump.asLeft?.decision).toHaveProperty('verdict')
      }
    expect(parsed.totals.costPerMonth).toMatch(/^\d+(\.\d+)?$/u)
    // 12 months back, this one, 12 to come; stock and orders of every product
    expect(parsed.spend?.months).toHaveLength(25)
    for (const product of parsed.spend?.products ?? []) {
      expect(product.stock).toHaveProperty('expanded')
      expect(product.reorder).toHaveProperty('containers')
      expect(product.reconciliations.length).toBeGreaterThan(0)
    }
    expect(parsed.spend?.savings).toHaveProperty('total')
    expect(parsed.spend?.changes).toHaveProperty('steps')
  })

  it('prints text for people: each pump, its state, the month and the money', () => {
    const { code, out } = worksheet(join(demo, 'copper-spoon-diner.json'), '--as-of', '2026-11-25')
    expect(code).toBe(0)
    for (const words of ['Copper Spoon Diner', 'Sanitizer pump', 'mg/L active', 'USD', 'a month'])
      expect(out).toContain(words)
  })

  it('speaks in sentences: the decision, the series, the advice for an open visit, and no reason codes', () => {
    const file = JSON.parse(readFileSync(join(demo, 'copper-spoon-diner.json'), 'utf8')) as {
      site: { visits: { closing: unknown; setupId: unknown }[] }
    }
    const last = file.site.visits.at(-1)
    if (last === undefined) throw new Error('the demo site has no visit')
    last.closing = null
    last.setupId = null
    const open = join(folder, 'open.json')
    writeFileSync(open, JSON.stringify(file))
    const { code, out } = worksheet(open, '--as-of', '2026-11-25')
    expect(code).toBe(0)
    for (const words of ['In window', 'runs that agree', 'to settle', 'with time', 'Next visit'])
      expect(out).toContain(words)
    expect(out).toMatch(
      /next +(?:Leave the screw|Turn the screw|Answer the site conditions|Read the cautions)/u,
    )
    expect(out).not.toMatch(
      /\b(?:not-tested|in-not-proved|proved-in|proved-out|too-few-runs|screw-does-not-act)\b/u,
    )
  })

  it('says what the screens say: odd dosing times, slug and probe, drift, the tube, and the order day of each product', () => {
    const file = JSON.parse(readFileSync(join(demo, 'millbrook-school-kitchen.json'), 'utf8')) as {
      site: {
        machines: { wash: { feeding: string }; pumps: Record<string, unknown>[] }[]
        snapshots: { machines: { wash: { feeding: string }; pumps: Record<string, unknown>[] }[] }[]
      }
    }
    for (const { machines } of [file.site, ...file.site.snapshots])
      for (const machine of machines) {
        machine.wash.feeding = 'slug'
        for (const pump of machine.pumps)
          if (pump['role'] === 'rinse-aid') pump['doseSeconds'] = { value: '0.4', unit: 's' }
      }
    const slug = join(folder, 'slug.json')
    writeFileSync(slug, JSON.stringify(file))
    const { code, out } = worksheet(slug, '--as-of', '2026-11-25')
    expect(code).toBe(0)
    expect(out).toMatch(/The pump runs only 0\.4\d* s a rack, too short to repeat well/u)
    expect(out).toMatch(/The dose goes in all at once, so every rack swings between [\d.]+ and [\d.]+ g\/L/u)
    expect(out).toMatch(/with time +\S.*\n.*(?:leaves its window|out of its window|stays in its window)/u)
    expect(out).toMatch(/tube +(?:Replace the tube, then adjust|Nothing speaks against it)\. \d+ days? old/u)
    const shelf = out.slice(out.indexOf('On the shelf'))
    expect(shelf).toMatch(/Order (?:now|by \d+ \w{3} \d{4}): \d+ × \d+ L, [\d.]+ USD/u)

    for (const { machines } of [file.site, ...file.site.snapshots])
      for (const machine of machines)
        for (const pump of machine.pumps) if (pump['role'] === 'detergent') pump['control'] = 'probe'
    writeFileSync(slug, JSON.stringify(file))
    expect(worksheet(slug, '--as-of', '2026-11-25').out).toMatch(
      /A probe holds the strength; its set point is not known\. A conductivity check is missing/u,
    )
  })

  it('says in one sentence where a damaged file is wrong, exits with 2 and writes nothing', () => {
    const good = JSON.parse(readFileSync(join(demo, 'lantern-lane-cafe.json'), 'utf8')) as {
      site: { machines: { pumps: { doseSeconds: unknown }[] }[] }
    }
    const [pump] = good.site.machines[0]?.pumps ?? []
    if (pump === undefined) throw new Error('the demo site has no pump')
    pump.doseSeconds = { value: 'soon', unit: 's' }
    const bad = join(folder, 'bad.json')
    writeFileSync(bad, JSON.stringify(good))
    const before = readdirSync(folder)
    const { code, out, err } = worksheet(bad, '--json')
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err.trim().split('\n')).toHaveLength(1)
    expect(err).toMatch(/pump|machine/iu)
    expect(readdirSync(folder)).toEqual(before)
  })

  it.each([
    ['a file that is not JSON', 'not json at all', /JSON|read/iu],
    ['a file of another program', '{"format":"something"}', /file/iu],
    ['an empty file', '', /./u],
  ])('refuses %s', (_, text, says) => {
    const file = join(folder, 'other.json')
    writeFileSync(file, text)
    const { code, out, err } = worksheet(file)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err).toMatch(says)
    expect(err.trim().split('\n')).toHaveLength(1)
  })

  it.each([
    [[], /one site file/u],
    [['nowhere.json'], /cannot be read/u],
    [['a.json', '--as-of', 'today'], /not a day/u],
    [['a.json', '--colour'], /not how this command is called/u],
  ])('called with %j says how to call it', (args, says) => {
    const { code, err } = worksheet(...args)
    expect(code).toBe(2)
    expect(err).toMatch(says)
  })
})
