import { feedsATank } from '#core/dose/feeds-a-tank'
import type { Pump, Verification, VerificationMethod } from '#core/records/index'
import type { Stamp } from '../../commands/visit'

/** A check about to be read: where it is likeliest made, with the last one of its kind for its kit and factor. */
export function newCheck(
  method: VerificationMethod,
  pump: Pick<Pump, 'feeds'>,
  earlier: readonly Verification[],
  stamp: Stamp,
): Verification {
  const last = earlier
    .filter((check) => check.method === method)
    .toSorted((a, b) => (a.at < b.at ? -1 : 1))
    .at(-1)
  return {
    ...stamp,
    method,
    where: last?.where ?? (feedsATank(pump) ? 'wash-tank' : 'rinse-water'),
    instrumentId: last?.instrumentId ?? null,
    reading: null,
    step: last?.step ?? null,
    factor: last?.factor ?? null,
    blank: last?.blank ?? null,
  }
}
