/**
 * The value of a formula with the numbers put in, as a working prints it: `q = 60 × (29.5 + 30.1) / (60 + 60)`.
 * What stands before `=` is dropped; × − ² √ and thin thousands are understood. A plain descent, so that nothing is
 * evaluated as code.
 */
export function arithmetic(text: string): number {
  const source = text
    .slice(text.indexOf('=') + 1)
    .replace(/(?<=\d) (?=\d{3}(?!\d))/g, '')
    .replaceAll(' ', '')
  let at = 0
  const take = (sign: string): boolean => {
    if (source[at] !== sign) return false
    at += 1
    return true
  }
  const atom = (): number => {
    if (take('√')) return Math.sqrt(powered())
    if (take('−')) return -powered()
    if (take('(')) {
      const inside = sum()
      if (!take(')')) throw new Error(`no closing bracket in ${text}`)
      return inside
    }
    const digits = /^\d+(?:\.\d+)?/.exec(source.slice(at))?.[0]
    if (digits === undefined) throw new Error(`no number at ${at} of ${source}`)
    at += digits.length
    return Number(digits)
  }
  const powered = (): number => {
    const base = atom()
    return take('²') ? base * base : base
  }
  const term = (): number => {
    let value = powered()
    for (;;)
      if (take('×')) value *= powered()
      else if (take('/')) value /= powered()
      else return value
  }
  const sum = (): number => {
    let value = term()
    for (;;)
      if (take('+')) value += term()
      else if (take('−')) value -= term()
      else return value
  }
  const value = sum()
  if (at !== source.length) throw new Error(`left over in ${text}: ${source.slice(at)}`)
  return value
}
