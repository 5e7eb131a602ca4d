import { describe, expect, it } from 'vitest'
import { crossedProblem } from '#renderer/fields/range-problem.ts'
import { entry } from '#core/units/entry'

describe('two limits that belong together', () => {
  it('says so when the lowest is above the highest, also across units: 15 psi is more than 25 kPa', () => {
    expect(crossedProblem(entry('15', 'psi'), entry('25', 'kPa'))).toMatch(/more than/u)
    expect(crossedProblem(entry('180', 'degF'), entry('80', 'degC'))).toMatch(/more than/u)
  })

  it('keeps quiet when they stand in order, are the same, or one is empty or does not read', () => {
    expect(crossedProblem(entry('15', 'psi'), entry('25', 'psi'))).toBeNull()
    expect(crossedProblem(entry('1', 'bar'), entry('100', 'kPa'))).toBeNull()
    expect(crossedProblem(null, entry('25', 'kPa'))).toBeNull()
    expect(crossedProblem(entry('x', 'psi'), entry('25', 'kPa'))).toBeNull()
  })
})
