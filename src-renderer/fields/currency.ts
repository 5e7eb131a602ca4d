/** What is wrong with a currency code, in words; null when it is three letters. */
export const currencyProblem = (text: string): string | null =>
  /^[A-Za-z]{3}$/u.test(text.trim()) ? null : 'A currency has three letters. Write it like EUR or USD.'
