import type { Outcome } from '../outcome'
import type { Problem } from '../problem'
import type { SiteSpend } from '../spend/site-spend'
import { Decimal } from '../units/decimal'
import type { GlassResult } from '../worksheet/glass-of'
import type { Worksheet } from '../worksheet/types'

/**
 * A worksheet as plain JSON for other programs: a good outcome becomes its value, a problem becomes its code and its
 * sentence, money becomes decimal text. Numbers keep every digit. The rack-by-rack strengths of a tank are left out: its
 * summary tells them. Described by `worksheet-schema.ts`.
 */
export const worksheetJson = (
  worksheet: Worksheet,
  says: (problem: Problem) => string,
  spend?: SiteSpend,
  glass?: readonly GlassResult[],
): unknown => ({
  format: 'dosewright-worksheet',
  version: 1,
  ...(plain(worksheet, says) as Readonly<Record<string, unknown>>),
  ...(spend === undefined ? {} : { spend: plain(spendPart(spend), says) }),
  ...(glass === undefined ? {} : { glass: plain(glass, says) }),
})

/** The spend without what the worksheet says itself. */
const spendPart = ({ products, months, visits, savings, changes, scenarios }: SiteSpend): unknown => ({
  products,
  months,
  visits,
  savings,
  changes,
  scenarios,
})

function plain(node: unknown, says: (problem: Problem) => string): unknown {
  if (node instanceof Decimal) return node.toFixed()
  if (Array.isArray(node)) return node.map((item) => plain(item, says))
  if (typeof node !== 'object' || node === null) return node
  if (isOutcome(node)) return node.ok ? plain(node.value, says) : told(node.problem, says)
  return Object.fromEntries(
    Object.entries(node).flatMap(([key, value]) =>
      key === 'points'
        ? []
        : [
            [
              key,
              key === 'missing' && Array.isArray(value)
                ? value.map((problem) => told(problem as Problem, says))
                : plain(value, says),
            ],
          ],
    ),
  )
}

const told = (problem: Problem, says: (problem: Problem) => string): unknown => ({
  problem: problem.code,
  says: says(problem),
})

const isOutcome = (node: object): node is Outcome<unknown> =>
  'ok' in node && ((node.ok === true && 'value' in node) || (node.ok === false && 'problem' in node))
