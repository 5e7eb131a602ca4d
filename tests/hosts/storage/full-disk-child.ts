import { site } from '../../contract/sample-site'
import { openStore, siteFile } from './files'

// Run with a limit on the size of files: saves a small site, then one that does not fit, and says what happened.
const [root = ''] = process.argv.slice(2)
const store = openStore(root)
const made = site()
const name = { kind: 'site', id: made.id } as const
const created = await store.create(name, siteFile(made))
if (!created.ok) throw new Error(JSON.stringify(created.problem))
const large = { ...made, visitEveryDays: null, notes: 'x'.repeat(9_000), timeZone: 'y'.repeat(200) }
const stock = Array.from({ length: 200 }, (_, index) => ({
  id: `11111111-0000-4000-8000-${index.toString().padStart(12, '0')}`,
  on: '2025-03-01',
  productId: made.id,
  kind: 'count' as const,
  fullContainers: '3',
  containerSize: { value: '5', unit: 'L' as const },
  part: null,
  tare: null,
  reference: '',
  visitId: null,
}))
const refused = await store.write(name, siteFile({ ...large, stock }), created.value.revision)
const reopened = await store.open(name)
const again = await store.write(name, siteFile({ ...made, notes: 'small again' }), created.value.revision)
console.log(
  JSON.stringify({
    id: made.id,
    refused,
    kept: reopened.ok && reopened.value.document.site.notes === made.notes,
    again: again.ok,
  }),
)
