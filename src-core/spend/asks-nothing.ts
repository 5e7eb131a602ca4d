import type { NumberText, Scenario } from '../records'

/** Whether a what-if leaves all as today: every field empty, and every share 100 %. */
export const asksNothing = (
  scenario: Pick<Scenario, 'racksPercent' | 'rinseVolumePercent' | 'changes'>,
): boolean =>
  isWhole(scenario.racksPercent) &&
  isWhole(scenario.rinseVolumePercent) &&
  scenario.changes.every(
    (change) =>
      change.productId === null &&
      isWhole(change.dosePercent) &&
      change.pricePerContainer === null &&
      change.containerSize === null &&
      change.strengthPercent === null,
  )

const isWhole = (percent: NumberText | null): boolean => percent === null || Number(percent) === 100
