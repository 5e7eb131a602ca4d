import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { siteFileJsonSchema } from '#core/documents/json-schema'

// `npm run schemas`: a test fails while the published schema is not the one the program uses.
const target = fileURLToPath(new URL('../../assets/site-file.schema.json', import.meta.url))
writeFileSync(target, `${JSON.stringify(siteFileJsonSchema(), null, 2)}\n`)
console.log('Wrote assets/site-file.schema.json')
