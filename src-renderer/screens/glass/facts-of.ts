import type { KnownFact } from '#core/glass/known-types'
import { racksOfOneFill } from '#core/glass/known-conditions'
import { fillSentence, knownSentence, stockSentence } from '#core/glass/words/sentences'
import type { Machine } from '#core/records/index'
import { formatPlaces } from '#core/units/format'
import { spendOf } from '#core/worksheet/spend-of'
import type { SiteSession } from '../../state/site-session.svelte'
import { dayWords } from '../../state/days-words'

/** What the record knows about a machine, as sentences: facts of visits, the stock of rinse aid, racks of one fill. */
export function factSentences(
  session: SiteSession,
  machine: Machine | null,
  known: readonly KnownFact[],
): readonly { readonly text: string; readonly trusted: boolean }[] {
  const told = known.map((fact) => ({
    text: knownSentence(fact, fact.on === null ? null : dayWords(fact.on)),
    trusted: fact.trusted,
  }))
  return [...told, ...stockFacts(session, machine), ...fillFacts(session, machine)]
}

function stockFacts(session: SiteSession, machine: Machine | null) {
  const { site, products, settings, worksheet, today } = session
  const fed = machine?.pumps.filter((pump) => pump.role === 'rinse-aid').map((pump) => pump.productId) ?? []
  if (fed.length === 0) return []
  const lines = spendOf(worksheet, { site, products, settings }).products.filter((line) =>
    fed.includes(line.productId),
  )
  return lines.flatMap(({ reorder }) =>
    reorder.ok
      ? [
          {
            text: stockSentence(dayWords(reorder.value.runsOutOn), reorder.value.runsOutOn <= today),
            trusted: true,
          },
        ]
      : [],
  )
}

function fillFacts(session: SiteSession, machine: Machine | null) {
  const racks = machine === null ? null : racksOfOneFill({ machine })
  return racks === null
    ? []
    : [
        {
          text: fillSentence(formatPlaces(racks, 0, session.settings.decimalSign)),
          trusted: true,
        },
      ]
}
