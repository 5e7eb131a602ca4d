import { describe, expect, it } from 'vitest'
import { commonOptions } from '#renderer/charts/common.ts'
import type { Palette } from '#renderer/charts/palette.ts'
import { withEveryName } from '#renderer/screens/spend/every-name.ts'

const palette = new Proxy({}, { get: () => '#000000' }) as Palette
const common = commonOptions<'bar'>(palette, { yTitle: 'USD', tick: String, legend: false })

describe('the picture of what moved the cost', () => {
  it('leaves no step without its name, standing or, on a phone, lying', () => {
    const standing = withEveryName(common, false)
    expect(standing.scales?.['x']).toMatchObject({ ticks: { autoSkip: false } })
    const lying = withEveryName(common, true)
    expect(lying.indexAxis).toBe('y')
    expect(lying.scales?.['y']).toMatchObject({ ticks: { autoSkip: false } })
    // the money lies along the bottom then
    expect(lying.scales?.['x']).toMatchObject({ title: { text: 'USD' } })
  })
})
