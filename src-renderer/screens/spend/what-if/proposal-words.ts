import type { NumberText, Pump, Scenario } from '#core/records/index'
import { formatEntry } from '#core/units/format'
import { listed } from '../../../parts/listed'
import type { SpendDesk } from '../spend-desk.svelte'

/** Another product is costed at the dose of today, unless its own is asked for: whoever reads a quote must know. */
const sameVolume = (pump: Pump, change: Scenario['changes'][number]): string =>
  pump.control === 'probe' || change.strengthPercent !== null || !isWhole(change.dosePercent)
    ? ''
    : ' at the same mL per rack'

const isWhole = (percent: NumberText | null): boolean => percent === null || Number(percent) === 100

/** What a what-if changes, line by line, as a quote says it. Empty: nothing. */
export function proposalWords(desk: SpendDesk, scenario: Scenario): readonly string[] {
  const number = (text: NumberText): string => (desk.sign === 'comma' ? text.replace('.', ',') : text)
  const { racksPercent: racks, rinseVolumePercent: water } = scenario
  return [
    ...(racks === null || Number(racks) === 100 ? [] : [`Racks: ${number(racks)} % of today.`]),
    ...(water === null || Number(water) === 100
      ? []
      : [`Fresh water per rack: ${number(water)} % of today; doses follow, so that strengths stay.`]),
    ...scenario.changes.flatMap((change) => {
      const pump = desk.pump(change.pumpId)?.pump
      if (pump === undefined) return []
      const now = desk.product(pump.productId)
      const today =
        now === null || now.strength.kind === 'none' ? '' : ` instead of ${number(now.strength.percent)} %`
      const parts = [
        ...(change.productId === null
          ? []
          : [
              `${desk.productName(change.productId)} instead of ${desk.productName(pump.productId)}${sameVolume(pump, change)}`,
            ]),
        ...(change.dosePercent === null || Number(change.dosePercent) === 100
          ? []
          : [`dose ${number(change.dosePercent)} % of today`]),
        ...(change.strengthPercent === null
          ? []
          : [`product of ${number(change.strengthPercent)} %${today}, dosed to the same active strength`]),
        ...(change.containerSize === null
          ? []
          : [`containers of ${formatEntry(change.containerSize, desk.sign)}`]),
        ...(change.pricePerContainer === null
          ? []
          : [`${number(change.pricePerContainer)} ${desk.currency} a container`]),
      ]
      return parts.length === 0 ? [] : [`${pump.name}: ${listed(parts)}.`]
    }),
  ]
}
