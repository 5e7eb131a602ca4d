/** One stroke of a drawing: the path and how it is drawn. */
export interface Stroke {
  readonly d: string
  readonly as: 'line' | 'thin' | 'ink' | 'pale' | 'water' | 'cross' | 'paper'
}

export const line = (d: string): Stroke => ({ d, as: 'line' })
export const thin = (d: string): Stroke => ({ d, as: 'thin' })
export const ink = (d: string): Stroke => ({ d, as: 'ink' })
export const pale = (d: string): Stroke => ({ d, as: 'pale' })
export const water = (d: string): Stroke => ({ d, as: 'water' })
/** a bold cross over what must not be there */
export const cross = (x: number, y: number, r: number): Stroke => ({
  d: `M${x - r} ${y - r}L${x + r} ${y + r}M${x + r} ${y - r}L${x - r} ${y + r}`,
  as: 'cross',
})
/** a plain shape in the colour of the ground, to cover what lies behind */
export const paper = (d: string): Stroke => ({ d, as: 'paper' })

export const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`

export const box = (x: number, y: number, width: number, height: number): string =>
  `M${x} ${y}h${width}v${height}h${-width}z`

/** A tumbler standing with its foot at y + height. */
export const tumbler = (x: number, y: number, width: number, height: number): string =>
  `M${x} ${y}l${width * 0.12} ${height}h${width * 0.76}l${width * 0.12} ${-height}z`

/** The same upside down, as in a rack. */
export const upturned = (x: number, y: number, width: number, height: number): string =>
  `M${x + width * 0.12} ${y}h${width * 0.76}l${width * 0.12} ${height}h${-width}z`

export const bottle = (x: number, y: number): string => `M${x + 7} ${y}h8v8q9 4 9 12v24h-26v-24q0-8 9-12z`

export const cloth = (x: number, y: number): string => `M${x} ${y}q9-7 18 0t16 2l-3 18q-8 5-14 1t-15 0z`

export const drop = (x: number, y: number): string => `M${x} ${y}q-6 9 0 12q6-3 0-12z`

export const lamp = (x: number, y: number): string =>
  `M${x} ${y}l-10 14h20zM${x - 14} ${y + 18}l-5 7M${x} ${y + 19}v9M${x + 14} ${y + 18}l5 7`

export const eye = (x: number, y: number): string =>
  `M${x - 13} ${y}q13-12 26 0q-13 12-26 0z${circle(x, y, 4)}`

export const clock = (x: number, y: number, r: number): string =>
  `${circle(x, y, r)}M${x} ${y - r * 0.6}V${y}H${x + r * 0.5}`

export const tap = (x: number, y: number): string =>
  `M${x} ${y}h18q12 0 12 12v6h-8v-5q0-5-5-5h-17zM${x + 6} ${y}v-8M${x - 1} ${y - 8}h14`
