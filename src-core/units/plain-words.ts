/** A text as it is compared when somebody looks for it: accents and case aside. */
export const plainWords = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()

/** The words looked for, each on its own. */
export const wordsOf = (typed: string): readonly string[] => plainWords(typed).split(/\s+/u).filter(Boolean)
