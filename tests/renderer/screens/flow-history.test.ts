import { describe, expect, it } from 'vitest'
import { flowFinding, type FlowPoint } from '#renderer/screens/site/flow-history.ts'

const show = (flow: number): string => `${flow} mL/min`
const point = (found: number | null, left: number | null): FlowPoint => ({
  visitId: 'v',
  day: '2026-11-25',
  found,
  left,
})

describe('the flows of a pump in one sentence', () => {
  it('keeps what was found apart from what was left', () => {
    expect(flowFinding('Aid', [point(11, 13.9)], show)).toBe(
      'Aid, one visit: last found at 11 mL/min, left at 13.9 mL/min.',
    )
    expect(flowFinding('Aid', [point(11, null)], show)).toBe(
      'Aid, one visit: last found at 11 mL/min and left there.',
    )
  })
})
