/**
 * Compensated sum (Neumaier 1974, an improvement of Kahan's): the rounding error of every addition is carried along,
 * so that the result is right to about one unit in the last place however long the list.
 */
export const compensatedSum = (values: readonly number[]): number =>
  compensatedSumOf(values, (value) => value)

/** The same of what `term` makes of each item, without a list of the terms. */
export function compensatedSumOf<T>(items: readonly T[], term: (item: T, index: number) => number): number {
  let sum = 0
  let lost = 0
  for (let i = 0; i < items.length; i += 1) {
    const value = term(items[i] as T, i)
    const next = sum + value
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum
    sum = next
  }
  return sum + lost
}

/**
 * Beyond this no reading of ours lies, and squares and sums below it never overflow a double.
 */
export const LARGEST = 1e100

/** Whether a number can take part in a calculation. */
export const isUsable = (value: number): boolean => Math.abs(value) <= LARGEST

/** Whether every number can. */
export const usable = (values: readonly number[]): boolean => values.every(isUsable)
