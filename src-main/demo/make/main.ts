import { mkdirSync, writeFileSync } from 'node:fs'
import { siteFile } from '#core/documents/site-schema'
import { demoSites } from './sites'

/** Writes the demo sites into assets/demo. They are made by rule from seeds, so this changes nothing unless the rule does. */
const folder = new URL('../../../assets/demo/', import.meta.url)
mkdirSync(folder, { recursive: true })
for (const file of demoSites()) {
  const checked = siteFile.parse(file)
  const name = checked.site.name.toLowerCase().replaceAll(/[^a-z0-9]+/gu, '-')
  writeFileSync(new URL(`${name}.json`, folder), `${JSON.stringify(checked, null, 1)}\n`)
}
