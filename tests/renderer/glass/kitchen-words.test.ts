import { parse } from 'svelte/compiler'
import { describe, expect, it } from 'vitest'
import { sources } from '../../rules/sources'

/** Kitchen staff read what these show; the reading grade is measured over the words in src-core/glass/words. */
const shown = sources('src-renderer/screens/glass', ['.svelte']).filter(
  ({ path }) => !path.includes('/rep/') && !path.endsWith('GlassScreen.svelte'),
)

/** Units stand beside numbers and are no words. */
const UNITS = new Set(['mg'])

function textsIn(node: unknown): readonly string[] {
  if (Array.isArray(node)) return node.flatMap(textsIn)
  if (typeof node !== 'object' || node === null) return []
  const { type, data, name, value, ...rest } = node as Readonly<Record<string, unknown>>
  if (type === 'Text') return typeof data === 'string' ? [data] : []
  if (type === 'Attribute')
    return ['aria-label', 'title', 'alt', 'aria-description'].includes(String(name)) ? textsIn(value) : []
  return [...textsIn(value), ...Object.values(rest).flatMap(textsIn)]
}

describe('the words kitchen staff read', () => {
  it('there are pages to look at', () => {
    expect(shown.length).toBeGreaterThan(10)
  })

  it.each(shown.map(({ path, text }) => [path, text] as const))(
    'stand in the measured tables and not in %s',
    (_path, text) => {
      const { fragment } = parse(text, { modern: true })
      const words = textsIn(fragment)
        .map((one) => one.trim())
        .filter((one) => /\p{L}/u.test(one) && !UNITS.has(one))
      expect(words).toEqual([])
    },
  )
})
