import type { Chart, Plugin } from 'chart.js'
import type { Palette } from './palette'

/** A day that matters, as an upright line with a word on it. `look`: solid for what happened, dashed for what may. */
export interface DayMark {
  readonly day: number
  readonly word: string
  readonly look: 'solid' | 'dashed'
  readonly tone: 'ink' | 'bad'
}

/** A span of a value at a day: the interval of a test. */
export interface Whisker {
  readonly day: number
  readonly low: number
  readonly high: number
}

const CAP = 4
const FONT = "13px 'Inter Variable', system-ui, sans-serif"
const LINE_HEIGHT = 16

/**
 * Draws upright lines at days and the intervals of points on a chart with day numbers along x. Words that would meet
 * the one before are set one line lower.
 */
export const dayMarks = (
  marks: readonly DayMark[],
  whiskers: readonly Whisker[],
  palette: Palette,
): Plugin<'line'> => ({
  id: 'day-marks',
  beforeDatasetsDraw: (chart) => {
    clipped(chart, (brush) => drawWhiskers(chart, brush, whiskers, palette))
  },
  afterDatasetsDraw: (chart) => {
    drawMarks(chart, marks, palette)
  },
})

function clipped(chart: Chart<'line'>, draw: (brush: CanvasRenderingContext2D) => void): void {
  const { ctx: brush, chartArea: area } = chart
  brush.save()
  brush.beginPath()
  brush.rect(area.left, area.top, area.width, area.height)
  brush.clip()
  draw(brush)
  brush.restore()
}

function drawWhiskers(
  chart: Chart<'line'>,
  brush: CanvasRenderingContext2D,
  whiskers: readonly Whisker[],
  palette: Palette,
): void {
  const { x, y } = chart.scales
  if (x === undefined || y === undefined) return
  brush.strokeStyle = palette.lineStrong
  brush.lineWidth = 1.5
  for (const { day, low, high } of whiskers) {
    const at = x.getPixelForValue(day)
    const [top, foot] = [y.getPixelForValue(high), y.getPixelForValue(low)]
    brush.beginPath()
    brush.moveTo(at, top)
    brush.lineTo(at, foot)
    for (const end of [top, foot]) {
      brush.moveTo(at - CAP, end)
      brush.lineTo(at + CAP, end)
    }
    brush.stroke()
  }
}

function drawMarks(chart: Chart<'line'>, marks: readonly DayMark[], palette: Palette): void {
  const { x } = chart.scales
  const { ctx: brush, chartArea: area } = chart
  if (x === undefined) return
  brush.save()
  brush.font = FONT
  brush.textBaseline = 'top'
  let taken = -Infinity
  let row = 0
  for (const { day, word, look, tone } of marks) {
    const at = x.getPixelForValue(day)
    if (at < area.left || at > area.right) continue
    brush.strokeStyle = brush.fillStyle = tone === 'bad' ? palette.bad : palette.ink
    brush.lineWidth = 1.5
    brush.setLineDash(look === 'solid' ? [] : [6, 4])
    brush.beginPath()
    brush.moveTo(at, area.top)
    brush.lineTo(at, area.bottom)
    brush.stroke()
    const wide = brush.measureText(word).width
    const left = at + 5 + wide > area.right ? at - 5 - wide : at + 5
    row = left < taken ? row + 1 : 0
    taken = Math.max(taken, left + wide + 6)
    const top = area.top + 2 + row * LINE_HEIGHT
    const ink = brush.fillStyle
    brush.fillStyle = palette.surface
    brush.fillRect(left - 2, top - 1, wide + 4, LINE_HEIGHT)
    brush.fillStyle = ink
    brush.fillText(word, left, top)
  }
  brush.restore()
}
