import { readFileSync } from 'node:fs'
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decode, decodeAs } from '#core/documents/decode'
import { encode } from '#core/documents/encode'
import { DOCUMENT_LIMITS } from '#core/documents/limits'
import { siteFile, type SiteFile } from '#core/documents/site-schema'
import type { Machine } from '#core/records/index'
import { FORMATS, type DocumentKind } from '#core/documents/formats'

const fixture = (name: string): string =>
  readFileSync(new URL(`../../fixtures/documents/${name}`, import.meta.url), 'utf8')

const FIXTURES: readonly (readonly [DocumentKind, string])[] = [
  ['site', 'site-v2-full.json'],
  ['site', 'site-v2-new.json'],
  ['products', 'products-v1.json'],
  ['instruments', 'instruments-v1.json'],
  ['settings', 'settings-v1.json'],
]

const full = (): SiteFile => {
  const decoded = decode('site', fixture('site-v2-full.json'))
  if (!decoded.ok) throw new Error(JSON.stringify(decoded.problem))
  return decoded.value.document
}

/** The full fixture as loose JSON after one change, as text. */
const changed = (change: (file: ReturnType<typeof JSON.parse>) => void): string => {
  const file = JSON.parse(fixture('site-v2-full.json')) as unknown
  change(file)
  return JSON.stringify(file)
}

describe('files of today', () => {
  it.each(FIXTURES)('a %s file (%s) still opens, and comes out as the very text it was', (kind, name) => {
    const text = fixture(name)
    const decoded = decode(kind, text)
    if (!decoded.ok) throw new Error(JSON.stringify(decoded.problem))
    expect(decoded.value.from).toBe(FORMATS[kind].version)
    expect(encode(kind, decoded.value.document as never)).toBe(text)
  })

  it('open with a byte order mark in front and with Windows line ends', () => {
    const text = fixture('site-v2-full.json')
    expect(decode('site', `\uFEFF${text.replaceAll('\n', '\r\n')}`)).toMatchObject({ ok: true })
  })

  it('are frozen through and through once read', () => {
    const { site } = full()
    expect(Object.isFrozen(site)).toBe(true)
    expect(Object.isFrozen(site.machines[0]?.pumps[0]?.window)).toBe(true)
    expect(Object.isFrozen(site.visits[0]?.work[0]?.steps)).toBe(true)
  })

  it('give the same text whatever order their parts were in', () => {
    const shuffle = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(shuffle)
        : typeof value === 'object' && value !== null
          ? Object.fromEntries(
              Object.entries(value)
                .toReversed()
                .map(([key, part]) => [key, shuffle(part)]),
            )
          : value
    expect(encode('site', shuffle(full()) as SiteFile)).toBe(fixture('site-v2-full.json'))
  })

  it('show one changed entry as one changed line', () => {
    const lines = encode('site', full()).split('\n')
    const other = encode('site', {
      ...full(),
      site: { ...full().site, water: { ...full().site.water, hardness: { value: '14', unit: 'deg-dH' } } },
    }).split('\n')
    expect(other.length).toBe(lines.length)
    expect(other.filter((line, index) => line !== lines[index])).toEqual([
      '      "hardness": { "value": "14", "unit": "deg-dH" },',
    ])
  })
})

describe('a file that does not hold', () => {
  const cases: readonly (readonly [string, string, object])[] = [
    ['plain text', 'hello', { code: 'document-not-json', place: 'line 1, column 1' }],
    ['foreign JSON', '{"type":"FeatureCollection"}', { code: 'document-foreign' }],
    ['a JSON list', '[]', { code: 'document-foreign' }],
    ['another document of ours', fixture('products-v1.json'), { code: 'document-foreign' }],
    ['a newer version', changed((f) => (f.version = 3)), { code: 'document-newer', version: 3, known: 2 }],
    [
      'a version that is no number',
      changed((f) => (f.version = '1')),
      { code: 'document-malformed', place: 'version', reason: 'is not a version number' },
    ],
    [
      'a missing part',
      changed((f) => delete f.site.machines[1].pumps[0].setBy),
      { code: 'document-malformed', place: 'site.machines.1.pumps.0.setBy' },
    ],
    [
      'a part nobody knows',
      changed((f) => (f.site.machines[0].colour = 'red')),
      { place: 'site.machines.0', reason: 'has a part this program does not know: colour' },
    ],
    [
      'a number with a comma',
      changed((f) => (f.site.water.pH = '7,4')),
      { place: 'site.water.pH', reason: 'is not a plain decimal number' },
    ],
    [
      'a number decimal.js would take and we do not',
      changed((f) => (f.site.water.pH = '0x10')),
      { place: 'site.water.pH', reason: 'is not a plain decimal number' },
    ],
    [
      'a mass where a volume belongs',
      changed((f) => (f.site.machines[0].rinse.perRack.unit = 'kg')),
      { place: 'site.machines.0.rinse.perRack.unit' },
    ],
    [
      'a step of an unknown kind',
      changed((f) => (f.site.visits[0].work[0].steps[0].kind = 'guess')),
      { place: 'site.visits.0.work.0.steps.0.kind' },
    ],
    [
      'an id that is none',
      changed((f) => (f.site.id = '../../etc/passwd')),
      { place: 'site.id', reason: 'is not an id of this program (a UUID)' },
    ],
    [
      'a day that does not exist',
      changed((f) => (f.site.stock[0].on = '2025-02-30')),
      { place: 'site.stock.0.on', reason: 'is not a calendar day such as 2026-03-09' },
    ],
    [
      'a name of 10,000 characters',
      changed((f) => (f.site.name = 'x'.repeat(10_000))),
      { place: 'site.name', reason: 'is longer than 200 characters' },
    ],
    [
      'two visits with one id',
      changed((f) => (f.site.visits[1].id = f.site.visits[0].id)),
      { place: 'site.visits.1.id', reason: 'stands twice in its list' },
    ],
    [
      'two machines sharing a pump id',
      changed((f) => (f.site.machines[1].pumps[0].id = f.site.machines[0].pumps[0].id)),
      { place: 'site.machines.1.pumps.0.id', reason: 'belongs to another pump of this site' },
    ],
  ]

  it.each(cases)('%s is refused with the place of the fault', (_name, text, problem) => {
    expect(decode('site', text)).toMatchObject({ ok: false, problem })
  })

  it('a text past the size limit is refused unread', () => {
    const text = ' '.repeat(DOCUMENT_LIMITS.characters + 1)
    expect(decode('site', text)).toEqual({
      ok: false,
      problem: { code: 'document-too-large', megabytes: 33 },
    })
  })

  it('never says "invalid", whatever part is put in whatever place', () => {
    const file = JSON.parse(fixture('site-v2-full.json')) as unknown
    const paths: (readonly (string | number)[])[] = []
    const walk = (node: unknown, path: readonly (string | number)[]): void => {
      paths.push(path)
      if (Array.isArray(node)) node.forEach((item, index) => walk(item, [...path, index]))
      else if (typeof node === 'object' && node !== null)
        for (const [key, part] of Object.entries(node)) walk(part, [...path, key])
    }
    walk(file, [])
    fc.assert(
      fc.property(fc.constantFrom(...paths.slice(1)), fc.jsonValue({ maxDepth: 2 }), (path, value) => {
        const copy = structuredClone(file)
        let node = copy as Record<string | number, unknown>
        for (const step of path.slice(0, -1)) node = node[step] as Record<string | number, unknown>
        node[path.at(-1) ?? ''] = value
        const decoded = decode('site', JSON.stringify(copy))
        if (!decoded.ok) expect(JSON.stringify(decoded.problem)).not.toMatch(/[Ii]nvalid|expected|zod/)
      }),
      { numRuns: 1500 },
    )
  })
})

/** The machines as version 1 had them; fails when one got a second tank. */
const withoutSecond = (machines: readonly Machine[]): unknown =>
  machines.map((machine) => {
    if (machine.wash.kind !== 'tank') return machine
    const { upstream, feeding, ...wash } = machine.wash
    expect([upstream, feeding]).toEqual([null, 'with-rinse'])
    return { ...machine, wash }
  })

describe('a site file of version 1, from before machines could have a second tank', () => {
  const old = JSON.parse(fixture('site-v1-full.json')) as ReturnType<typeof JSON.parse>
  const opened = decode('site', fixture('site-v1-full.json'))
  if (!opened.ok) throw new Error(JSON.stringify(opened.problem))
  const { document, from } = opened.value

  it.each(['full', 'new'])('opens as what it was, and is kept as version 2 (%s)', (name) => {
    const decoded = decode('site', fixture(`site-v1-${name}.json`))
    if (!decoded.ok) throw new Error(JSON.stringify(decoded.problem))
    expect(decoded.value.from).toBe(1)
    expect(encode('site', decoded.value.document)).toBe(fixture(`site-v2-${name}.json`))
  })

  it('gets no second tank, in the live set-up as in those kept for closed visits, and nothing else changes', () => {
    expect(from).toBe(1)
    const back = {
      ...document,
      version: 1,
      site: {
        ...document.site,
        machines: withoutSecond(document.site.machines),
        snapshots: document.site.snapshots.map((kept) => ({
          ...kept,
          machines: withoutSecond(kept.machines),
        })),
      },
    }
    expect(back).toEqual(old)
  })

  it('with a fault names the place as ever, whatever stands where a machine belongs', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 3 }), fc.constantFrom('machines', 'snapshots'), (value, part) => {
        const text = JSON.stringify({ ...old, site: { ...old.site, [part]: [value] } })
        expect(decode('site', text)).toMatchObject({ ok: false, problem: { code: 'document-malformed' } })
      }),
    )
    expect(decode('site', JSON.stringify({ ...old, site: 7 }))).toMatchObject({ problem: { place: 'site' } })
  })
})

describe('older versions', () => {
  const format = {
    format: 'dosewright-site',
    version: 3,
    schema: siteFile,
    steps: [
      (old: Readonly<Record<string, unknown>>) => ({ ...old, trail: ['1 to 2'] }),
      (old: Readonly<Record<string, unknown>>) => {
        const { trail, ...rest } = old
        expect(trail).toEqual(['1 to 2'])
        expect(old['version']).toBe(2)
        return rest
      },
    ],
  } as const

  it('take every step in order, and the result is checked as a whole', () => {
    const lenient = { ...format, schema: siteFile } as const
    const decoded = decodeAs(lenient, fixture('site-v1-new.json'))
    // the schema of today meets a document that says 3: only the version is wrong, so both steps ran
    expect(decoded).toMatchObject({ ok: false, problem: { place: 'version' } })
  })

  it('a step from a frozen document leaves it as it was', () => {
    const before = Object.freeze({ version: 1, a: Object.freeze({ b: 1 }) })
    expect(format.steps[0](before)).toEqual({ version: 1, a: { b: 1 }, trail: ['1 to 2'] })
    expect(before).toEqual({ version: 1, a: { b: 1 } })
  })
})
