const SIZE = 10

/** Textures by series for filled shapes: plain, falling lines, dots, rising lines, level lines. */
const TEXTURES: readonly ((brush: CanvasRenderingContext2D) => void)[] = [
  () => {},
  (brush) => stroke(brush, [-2, -2, 12, 12], [3, -7, 17, 7], [-7, 3, 7, 17]),
  (brush) => dot(brush),
  (brush) => stroke(brush, [-2, 12, 12, -2], [3, 17, 17, 3], [-7, 7, 7, -7]),
  (brush) => stroke(brush, [0, 5, 10, 5]),
]

/**
 * A fill for the series with this number: its colour, scored with its texture in the colour of the ground. `faint` is
 * for what has not happened yet.
 */
export function fillOf(index: number, colour: string, ground: string, faint = false): CanvasPattern | string {
  const tile = document.createElement('canvas')
  tile.width = SIZE
  tile.height = SIZE
  const brush = tile.getContext('2d')
  if (brush === null) return colour
  brush.fillStyle = ground
  brush.fillRect(0, 0, SIZE, SIZE)
  brush.globalAlpha = faint ? 0.45 : 1
  brush.fillStyle = colour
  brush.fillRect(0, 0, SIZE, SIZE)
  brush.strokeStyle = ground
  brush.fillStyle = ground
  brush.lineWidth = 2
  TEXTURES[index % TEXTURES.length]?.(brush)
  return brush.createPattern(tile, 'repeat') ?? colour
}

function stroke(
  brush: CanvasRenderingContext2D,
  ...lines: readonly (readonly [number, number, number, number])[]
): void {
  for (const [x1, y1, x2, y2] of lines) {
    brush.beginPath()
    brush.moveTo(x1, y1)
    brush.lineTo(x2, y2)
    brush.stroke()
  }
}

function dot(brush: CanvasRenderingContext2D): void {
  brush.beginPath()
  brush.arc(SIZE / 2, SIZE / 2, 2, 0, 2 * Math.PI)
  brush.fill()
}
