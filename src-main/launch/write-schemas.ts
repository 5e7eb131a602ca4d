import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { siteFileJsonSchema } from '#core/documents/json-schema'
import { worksheetJsonSchema } from '#core/documents/worksheet-schema'

// `npm run schemas`: a test fails while a published schema is not the one the program uses.
for (const [name, schema] of [
  ['site-file', siteFileJsonSchema()],
  ['worksheet', worksheetJsonSchema()],
] as const) {
  const target = fileURLToPath(new URL(`../../assets/${name}.schema.json`, import.meta.url))
  writeFileSync(target, `${JSON.stringify(schema, null, 2)}\n`)
  console.log(`Wrote assets/${name}.schema.json`)
}
