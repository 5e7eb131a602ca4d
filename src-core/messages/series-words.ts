import type { Problem } from '../problem'
import type { GradedFinding, SeriesQuality } from '../drawdown/types'
import { formatNumber } from '../units/format'
import type { DecimalSign } from '../units/parse'
import { sentence } from './sentence'

/** What a series says about itself and what to do, in plain sentences. `run` gives the number of a run in its row. */
export function seriesSentences(
  quality: SeriesQuality,
  runs: number,
  sign: DecimalSign,
  run: (runId: string) => number,
): readonly Said[] {
  const said = quality.findings.map((finding) => ({
    text: findingSentence(finding, sign, run),
    stops: finding.severity === 'stops',
  }))
  if (said.length > 0 || runs === 0) return said
  return [{ text: agreement(quality, runs, sign), stops: false }]
}

interface Said {
  readonly text: string
  readonly stops: boolean
}

/** A run that counts for nothing: its number in its row, and what is wrong with it. */
export interface UnreadRun {
  readonly run: number
  readonly problem: Problem
}

/**
 * Runs that count for nothing, by their numbers: because a reading of theirs is missing or wrong, or because their
 * series lacks something (a cylinder, its bore), which is named once and is no fault of the readings.
 */
export function unreadSentences(unread: readonly UnreadRun[]): readonly Said[] {
  const misread = unread.filter(({ problem }) => isOfReading(problem)).map(({ run }) => run)
  const lacking = unread.flatMap(({ problem }) => (isOfReading(problem) ? [] : [sentence(problem)]))
  return [
    ...[...new Set(lacking)].map((text) => ({
      text: `${text} Until then there is no flow; the readings are kept.`,
      stops: false,
    })),
    ...misreadSentence(misread),
  ]
}

const isOfReading = (problem: Problem): boolean =>
  problem.code !== 'missing' && 'field' in problem && problem.field.startsWith('runs.')

const misreadSentence = (runs: readonly number[]): readonly Said[] =>
  runs.length === 0
    ? []
    : [
        {
          text:
            runs.length === 1
              ? `Run ${runs[0] ?? ''} is not in the series: a reading of it is missing or wrong. Change it, or leave it out with a reason.`
              : `Runs ${runs.join(', ')} are not in the series: a reading of each is missing or wrong. Change them, or leave them out with a reason.`,
          stops: false,
        },
      ]

function agreement(quality: SeriesQuality, runs: number, sign: DecimalSign): string {
  const { cv } = quality
  return cv === null
    ? `${count(runs)} so far.`
    : `${count(runs)} that agree: they scatter by ${percent(cv, sign)} and show no trend.`
}

const NUMBERS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine']

const count = (runs: number): string => `${NUMBERS[runs] ?? String(runs)} ${runs === 1 ? 'run' : 'runs'}`

const percent = (fraction: number, sign: DecimalSign): string =>
  `${formatNumber(fraction * 100, 2, sign)}\u00a0%`

function findingSentence(finding: GradedFinding, sign: DecimalSign, run: (runId: string) => number): string {
  const stops = finding.severity === 'stops'
  switch (finding.code) {
    case 'not-primed':
      return 'The line is not marked as primed. Prime until no bubble passes, then hold one minute.'
    case 'too-few-runs':
      if (finding.have === 0)
        return `No run counts yet: ${finding.need} are needed${stops ? ' before the screw is turned' : ''}.`
      return `${count(finding.have)}: ${finding.need - finding.have} more ${stops ? 'before the screw is turned' : 'make the usual test'}.`
    case 'rising':
      return stops
        ? `${NUMBERS[finding.runs] ?? finding.runs} rising runs: air is still leaving the line. Keep priming, then time again.`
        : `${NUMBERS[finding.runs] ?? finding.runs} rising runs in a row: it may be air leaving the line. Time one more.`
    case 'falling':
      return stops
        ? `${NUMBERS[finding.runs] ?? finding.runs} falling runs: look for an air leak, a blocked strainer, a closed cap or a nearly empty container.`
        : `${NUMBERS[finding.runs] ?? finding.runs} falling runs in a row: check cap, strainer and fittings. Time one more.`
    case 'trend':
      return finding.direction === 'rising'
        ? `The flow keeps rising, about ${formatNumber(Math.abs(finding.perRun), 2, sign)} mL/min each run. Prime on until three in a row agree.`
        : `The flow keeps falling, about ${formatNumber(Math.abs(finding.perRun), 2, sign)} mL/min each run. Look for air, a blocked strainer or a closed cap.`
    case 'outlier':
      return `Run ${run(finding.runId)} does not fit the others. Check its readings; leave it out only if you know why.`
    case 'scatter':
      return `The runs scatter by ${percent(finding.cv, sign)}; ${percent(finding.limit, sign)} is the limit. ${
        stops ? 'Look for bubbles or a loose fitting before you turn anything.' : 'Go to five runs.'
      }`
    case 'two-levels':
      return `The runs fall on two levels, ${formatNumber(finding.low, 3, sign)} and ${formatNumber(finding.high, 3, sign)} mL/min. A roller may not press, or one level was misread.`
    case 'few-graduations':
      return `Only ${finding.graduations} marks passed in a run; ${finding.need} are wanted. Time longer, or take a smaller cylinder.`
    case 'few-pulses':
      return `Only ${finding.pulses} roller passages in a run; ${finding.need} are wanted. Time longer.`
    case 'no-flow':
      return 'Nothing flows. Container empty, line not primed, tube split, or the motor does not turn? Look before you touch the screw.'
    case 'tube-overdue':
      return `The pump tube is ${finding.days} ${finding.days === 1 ? 'day' : 'days'} past its change.`
    default:
      return never(finding)
  }
}

const never = (finding: never): never => {
  throw new Error(`no sentence for ${JSON.stringify(finding)}`)
}
