import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import formats from 'ajv-formats'
import { describe, expect, it } from 'vitest'
import { siteFileJsonSchema } from '#core/documents/json-schema'

const published: unknown = JSON.parse(
  readFileSync(new URL('../../../assets/site-file.schema.json', import.meta.url), 'utf8'),
)
const fixture = (name: string): ReturnType<typeof JSON.parse> =>
  JSON.parse(readFileSync(new URL(`../../fixtures/documents/${name}`, import.meta.url), 'utf8')) as unknown

describe('the published JSON Schema of the site file', () => {
  it('is the schema the program uses (npm run schemas writes it)', () => {
    expect(published).toEqual(JSON.parse(JSON.stringify(siteFileJsonSchema())))
  })

  // Ajv 8 is a validator of its own, by other people, for draft 2020-12.
  const ajv = new Ajv2020({ strict: false })
  formats.default(ajv)
  const accepts = ajv.compile(published as object)

  it('lets another program accept our fixtures', () => {
    for (const name of ['site-v2-full.json', 'site-v2-new.json']) {
      accepts(fixture(name))
      expect(accepts.errors).toBeNull()
    }
  })

  it('lets another program refuse what we refuse', () => {
    const file = fixture('site-v2-full.json')
    expect(accepts({ ...file, extra: 1 })).toBe(false)
    expect(accepts({ ...file, version: 3 })).toBe(false)
    expect(accepts({ ...file, site: { ...file.site, currency: 'euro' } })).toBe(false)
    expect(accepts({ ...file, site: { ...file.site, id: 'x' } })).toBe(false)
  })
})
