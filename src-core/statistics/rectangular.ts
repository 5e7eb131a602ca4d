/** Standard uncertainty of a quantity known only to lie within +- `halfWidth`. Source: JCGM 100:2008 (GUM) 4.3.7. */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3)
