import type { CauseId } from '../causes'
import type { KnownFact } from '../known-types'
import type { NextTest } from '../next-test'
import type { Ranking, Reason } from '../rank'
import { CAUSE_WORDS } from './causes'
import { EVIDENCE_WORDS } from './evidence'
import { testWords } from './tests'

const NO_PLATE = { rinseAtLeast: null, pressure: null }

/** How much a reason counts, as a word: points from 1.5 on are strong, from 0.7 on fair. */
export const weightWord = (points: number): 'strong' | 'fair' | 'slight' =>
  Math.abs(points) >= 1.5 ? 'strong' : Math.abs(points) >= 0.7 ? 'fair' : 'slight'

/** JUDGEMENT: reasons of fewer points are left out of the account for kitchen staff. */
export const LEAST_TOLD = 0.3

/** A reason as a sentence. */
export function reasonSentence(reason: Reason): string {
  switch (reason.kind) {
    case 'seen':
      return fromVisit(reason.from, EVIDENCE_WORDS[reason.evidence].yes)
    case 'not-seen':
      return fromVisit(reason.from, reason.evidence.map((evidence) => EVIDENCE_WORDS[evidence].no).join(' '))
    case 'had-before':
      return 'Your rep found this cause here before.'
    case 'tried-in-vain':
      return 'You tried the cure and the marks came back.'
  }
}

const fromVisit = (from: 'operator' | 'record', text: string): string =>
  from === 'record' ? `From the last visit: ${text}` : text

/** Why a test is the next one. */
export function nextReason(next: NextTest): string {
  const { effort } = testWords(next.test, NO_PLATE)
  return next.tells === null
    ? `It may tell us more, and it takes ${effort}.`
    : `It can tell ${CAUSE_WORDS[next.tells[0]].short} from ${CAUSE_WORDS[next.tells[1]].short}. It takes ${effort}.`
}

/** What the ranking comes to, in one sentence. */
export function verdictSentence(ranking: Ranking): string {
  const [first, second, ...more] = ranking.open
  if (first === undefined || second === undefined || ranking.separated) return 'This is the likely cause.'
  return more.length === 0
    ? `We cannot tell these two apart yet: ${nameIn(first)}, or ${nameIn(second)}.`
    : 'We cannot tell these causes apart yet. The likely ones come first.'
}

const nameIn = (cause: CauseId): string => CAUSE_WORDS[cause].short

/** What the record knows, as a sentence; `day` is the day as it is shown, null when the record has none. */
export function knownSentence(fact: KnownFact, day: string | null): string {
  const when = day === null ? 'The site record says: ' : `On ${day}: `
  const told = `${when}${knownWords(fact)}`
  return fact.trusted ? told : `${told} That is too long ago, so we do not count it.`
}

function knownWords({ kind, value, findings }: KnownFact): string {
  const yes = findings.find((finding) => finding.answer === 'yes')?.evidence
  switch (kind) {
    case 'rinse-aid-dose':
      if (yes === 'ra-dose-ok') return 'the rinse aid was right.'
      if (yes === 'ra-dose-low') return 'the rinse aid was too low.'
      if (yes === 'ra-dose-high') return 'the rinse aid was too high.'
      return (value ?? 1) < 1 ? 'the rinse aid was a little low.' : 'the rinse aid was a little high.'
    case 'detergent-strength':
      if (yes === 'det-low') return 'the wash water was too weak.'
      return yes === 'det-high' ? 'the wash water was too strong.' : 'the wash water was about right.'
    case 'hardness':
      return yes === 'hardness-high' ? 'the rinse water was hard.' : 'the rinse water was not hard.'
    case 'solids':
      if (yes === 'hardness-low-tds-high') return 'the rinse water was soft but held a lot of salt.'
      return yes === 'hard-and-tds-low'
        ? 'the rinse water held very little salt.'
        : 'the rinse water held some salt.'
    case 'rinse-temperature':
      return yes === 'rinse-cool' ? 'the last rinse was too cool.' : 'the last rinse was hot enough.'
    case 'rinse-pressure':
      return yes === 'pressure-bad' ? 'the rinse pressure was off.' : 'the rinse pressure was right.'
    case 'jets':
      return yes === 'jets-blocked' ? 'the rinse jets were blocked.' : 'the rinse jets were clean.'
    case 'racks-since-fill':
      return yes === 'racks-many' ? 'the wash water was old.' : 'the wash water was fresh.'
  }
}

/** When the rinse aid runs out by the last count of stock; `day` as it is shown. */
export const stockSentence = (day: string, isOut: boolean): string =>
  isOut
    ? `By the last count, the rinse aid ran out on ${day}. Look at the bottle first.`
    : `By the last count, there is rinse aid until ${day}.`

/** How many racks one fill of the tank is meant to last. */
export const fillSentence = (racks: string): string =>
  `One fill of the tank should last for about ${racks} racks.`

/** How far a check has come. */
export const progressSentence = (kind: 'question' | 'test', number: number, of: number): string =>
  kind === 'question'
    ? `Question ${number} of ${of}`
    : number > of
      ? `Test ${number}`
      : `Test ${number} of ${of} or fewer`
