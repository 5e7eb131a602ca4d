/** The working of one result, for a person: what was put in, how it was put together, where the rule comes from. */
export interface Working {
  readonly title: string
  /** the formula in plain symbols */
  readonly formula: string
  readonly inputs: readonly WorkingLine[]
  /** the formula with the numbers put in */
  readonly substituted: string
  readonly result: WorkingLine
  readonly source: string
  readonly assumptions: readonly string[]
}

export interface WorkingLine {
  readonly symbol: string
  readonly name: string
  readonly value: number
  readonly unit: string
}
