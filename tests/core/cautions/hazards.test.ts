import { describe, expect, it } from 'vitest'
import { hazardsOf, hazardsThatFollow } from '#core/cautions/incompatible'
import { HAZARDS, hazardHint } from '#renderer/screens/products/hazard-words.ts'
import { product } from '#tests/core/drawdown/records'

const hintOf = (value: string, of: ReturnType<typeof product>): string => {
  const hazard = HAZARDS.find((one) => one.value === value)
  if (hazard === undefined) throw new Error(`no hazard ${value}`)
  return hazardHint(hazard, hazardsThatFollow(of).get(hazard.value))
}

describe('hazards nobody had to tick', () => {
  // 10 % trade is 10 g of available chlorine in 100 mL: common practice, no source
  const bleach = product({
    role: 'sanitizer',
    strength: { kind: 'trade-percent', percent: '10', measuredOn: null },
  })

  it('counts a strength in available chlorine as chlorine and says it was taken from the strength', () => {
    expect(hazardsThatFollow(bleach).get('chlorine')).toBe('strength')
    expect(hintOf('chlorine', bleach)).toMatch(/^taken from its strength; never together/u)
    expect(hintOf('acid', bleach)).toBe('never together with chlorine')
  })

  it('takes an acid from a rinse aid by what it is for, until the label says alkaline', () => {
    expect(hintOf('acid', product())).toMatch(/^taken from what it is for/u)
    expect(hazardsThatFollow(product({ hazards: ['alkaline'] })).has('acid')).toBe(false)
  })

  it('guards against what follows exactly as against what was ticked', () => {
    const ticked = product({ role: 'sanitizer', hazards: ['chlorine', 'irritant'] })
    expect([...hazardsOf(bleach)]).toEqual(['chlorine'])
    expect(new Set(hazardsOf(ticked))).toEqual(new Set(['chlorine', 'irritant']))
  })
})
