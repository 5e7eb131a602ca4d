import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { FORMATS, type DocumentKind } from '#core/documents/formats'
import { sureOf } from '#core/documents/sure'
import { quickJson } from '#core/documents/quick-json'

const root = fileURLToPath(new URL('../../../', import.meta.url))
const text = (file: string): string => readFileSync(`${root}${file}`, 'utf8')

const DOCUMENTS: readonly (readonly [DocumentKind, string])[] = [
  ...readdirSync(`${root}assets/demo`).map((name) => ['site', `assets/demo/${name}`] as const),
  ['site', 'tests/fixtures/documents/site-v2-full.json'],
  ['site', 'tests/fixtures/documents/site-v2-new.json'],
  ['site', 'tests/fixtures/documents/site-v2-ordered.json'],
  ['products', 'tests/fixtures/documents/products-v1.json'],
  ['instruments', 'tests/fixtures/documents/instruments-v1.json'],
  ['settings', 'tests/fixtures/documents/settings-v1.json'],
]

type Node = Record<string | number, unknown>
type Path = readonly (string | number)[]

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null

function pathsOf(node: unknown, path: Path = []): readonly Path[] {
  if (!isNode(node)) return [path]
  const keys = Array.isArray(node) ? node.map((_, index) => index) : Object.keys(node)
  return [path, ...keys.flatMap((key) => pathsOf(node[key], [...path, key]))]
}

const at = (node: unknown, path: Path): unknown =>
  path.reduce<unknown>((inner, step) => (isNode(inner) ? inner[step] : undefined), node)

const frozenParts = (value: unknown): readonly string[] =>
  pathsOf(value)
    .filter((path) => Object.isFrozen(at(value, path)))
    .map((path) => path.join('.'))

/** What the schema says, in the terms of the quick answer: accepted, and given back just as it was. */
function bySchema(schema: z.ZodType, value: unknown): boolean {
  const parsed = schema.safeParse(structuredClone(value))
  return parsed.success && JSON.stringify(parsed.data) === JSON.stringify(value)
}

/** Values that lie on an edge of some rule of the schemas, and a few that lie far outside. */
// prettier-ignore
const EDGES: readonly unknown[] = [
  null, true, false, 0, -0, 1, 1.5, 12, 13, 800, 801, -801, 1e300, '', '0', '-1', '1.50', '1,5', '1e3',
  '9'.repeat(15), '9'.repeat(16), `${'9'.repeat(15)}.${'9'.repeat(15)}`, 'x'.repeat(200), 'x'.repeat(201),
  'x'.repeat(10_000), 'x'.repeat(10_001), 'EUR', 'eur', 'mL', 'kg', 'test', 'turn', 'tank', 'none',
  '2026-02-28', '2026-02-29', '2024-02-29', '2026-02-28T10:00:00Z', '2026-02-28T10:00:00.123Z',
  '2026-02-28T24:00:00Z', '2026-02-28T10:00:00+01:00', '00000000-0000-0000-0000-000000000000',
  '5f0c1b4e-8a57-4d2a-9a31-3f1f0d0a0b0c', '5f0c1b4e-8a57-9d2a-9a31-3f1f0d0a0b0c', [], {},
  { value: '1', unit: 'mL' }, { unit: 'mL', value: '1' }, { value: '1', unit: 'mL', more: 1 },
]

/** One change of a document: an edge value, another part of it, its keys the other way round, a key more or less. */
const change = fc.oneof(
  // a copy each time: what is looked at may be frozen, and a change would else reach the next document
  fc.constantFrom(...EDGES).map((value) => () => structuredClone(value)),
  fc.jsonValue({ maxDepth: 1 }).map((value) => () => structuredClone(value)),
  fc.constant((value: unknown) =>
    Array.isArray(value)
      ? value.toReversed()
      : isNode(value)
        ? Object.fromEntries(Object.entries(value).toReversed())
        : value,
  ),
  fc.constant((value: unknown) =>
    Array.isArray(value) ? [...value, ...value] : { ...Object(value), extra: 1 },
  ),
  fc.constant((value: unknown) =>
    isNode(value) && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).slice(1)) : value,
  ),
)

describe('a quick yes of a schema', () => {
  it.each(DOCUMENTS)(
    'a second time is the same yes, for a %s nothing of which can change (%s)',
    (kind, file) => {
      const document = quickJson(text(file))?.value
      const sure = sureOf(FORMATS[kind].schema)
      const first = sure(document)
      expect([sure(document), sure(structuredClone(document))]).toEqual([first, first])
      if (first) expect(frozenParts(document)).toEqual(pathsOf(document).map((path) => path.join('.')))
    },
  )

  it.each(DOCUMENTS)('is given to a %s as this program writes it (%s)', (kind, file) => {
    const value = quickJson(text(file))?.value
    expect(value).toBeDefined()
    const same = structuredClone(value)
    expect(sureOf(FORMATS[kind].schema)(value)).toBe(true)
    const parsed = FORMATS[kind].schema.parse(same)
    expect(value).toStrictEqual(parsed)
    expect(JSON.stringify(value)).toBe(JSON.stringify(parsed))
    expect(frozenParts(value)).toEqual(frozenParts(parsed))
  })

  it.each(DOCUMENTS.slice(5))(
    'is given if and only if the schema accepts the value and gives it back as it was: %s, %s',
    (kind, file) => {
      const { schema } = FORMATS[kind]
      const document: unknown = JSON.parse(text(file))
      const paths = pathsOf(document).slice(1)
      let accepted = 0
      fc.assert(
        fc.property(
          fc.array(fc.tuple(fc.constantFrom(...paths), change), { minLength: 0, maxLength: 2 }),
          (changes) => {
            const value = structuredClone(document)
            for (const [path, make] of changes) {
              const node = at(value, path.slice(0, -1))
              const key = path.at(-1)
              if (isNode(node) && key !== undefined) node[key] = make(node[key])
            }
            const wanted = bySchema(schema, value)
            if (wanted) accepted += 1
            expect(sureOf(schema)(value)).toBe(wanted)
          },
        ),
        { numRuns: 800 },
      )
      expect(accepted).toBeGreaterThan(50)
    },
    60_000,
  )

  it('is never given by a schema with parts it does not know, however good the value', () => {
    const unknown: readonly (readonly [z.ZodType, unknown])[] = [
      [z.string().refine((one) => one !== 'b'), 'a'],
      [z.string().min(1), 'a'],
      [z.string().trim(), 'a'],
      [z.email(), 'a@example.org'],
      [z.number().positive(), 1],
      [z.coerce.number(), 1],
      [z.object({ a: z.string() }), { a: 'a' }],
      [z.strictObject({ a: z.string().default('b').optional() }), { a: 'a' }],
      [z.strictObject({ a: z.string() }).refine(() => true), { a: 'a' }],
      [z.array(z.boolean()).refine(() => true), [true]],
      [z.union([z.string(), z.boolean()]), 'a'],
      [z.string().transform((one) => one.length), 'a'],
      [z.string().default('b'), 'a'],
      [z.string().regex(/a/g), 'a'],
      [z.record(z.string(), z.string()), { a: 'a' }],
      [
        z
          .boolean()
          .refine(() => true)
          .nullable(),
        true,
      ],
    ]
    for (const [schema, value] of unknown) {
      expect(schema.safeParse(value).success).toBe(true)
      expect(sureOf(schema)(value)).toBe(false)
    }
  })

  it('is given to a group with or without a part that may be missing, and only then', () => {
    const schema = z.strictObject({
      a: z.string(),
      b: z.string().exactOptional(),
      c: z.string(),
      d: z.string().exactOptional(),
    })
    const values = [
      { a: 'a', b: 'b', c: 'c', d: 'd' },
      { a: 'a', c: 'c' },
      { a: 'a', b: 'b', c: 'c' },
      { a: 'a', c: 'c', d: 'd' },
      { a: 'a', c: 'c', b: 'b' },
      { c: 'c', a: 'a' },
      { a: 'a', b: 'b' },
      { a: 'a', b: undefined, c: 'c' },
      { a: 'a', b: 1, c: 'c' },
      { a: 'a', c: 'c', e: 'e' },
      {},
    ]
    const sure = values.map((value) => sureOf(schema)(value))
    expect(sure).toEqual(values.map((value) => bySchema(schema, value)))
    expect(sure.filter((one) => one)).toHaveLength(4)
  })
})
