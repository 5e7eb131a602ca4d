import * as fc from 'fast-check'
import { expect, it } from 'vitest'
import { exportFileName } from '#core/services/file-name'

it.each([
  ['Harbour Grill', 'Harbour Grill'],
  ['Café Größe 厨房 🍽', 'Café Größe 厨房 🍽'],
  ['../../etc/passwd', 'etc passwd'],
  ['a/b\\c:d*e?f"g<h>i|j', 'a b c d e f g h i j'],
  ['CON', 'site CON'],
  ['nul.txt', 'site nul.txt'],
  ['COM7', 'site COM7'],
  ['Company', 'Company'],
  ['...', 'site'],
  ['   ', 'site'],
  ['', 'site'],
  ['\u202Egnp.exe', 'gnp.exe'],
  ['a\u0000b\nc', 'a b c'],
  ['x'.repeat(10_000), 'x'.repeat(80)],
])('%j is exported as "%s"', (name, file) => {
  expect(exportFileName(name)).toBe(`${file}.dosewright.json`)
})

it('any name becomes a file name every system takes', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (name) => {
      const file = exportFileName(name)
      expect(file).toMatch(/^[^/\\:*?"<>|\p{C}]+\.dosewright\.json$/u)
      expect(file).not.toMatch(/^[. ]|^(?:con|prn|aux|nul|com\d|lpt\d)\./i)
      expect([...file].length).toBeLessThan(110)
    }),
    { numRuns: 2000 },
  )
})
