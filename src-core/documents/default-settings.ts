import type { Settings } from '../records'

/** How a fresh installation speaks and counts, until somebody says otherwise. Three runs of 60 s: our own protocol. */
export const DEFAULT_SETTINGS: Settings = {
  repName: '',
  firmName: '',
  decimalSign: 'point',
  theme: 'system',
  sheet: 'A4',
  currency: 'EUR',
  units: 'metric',
  protocol: { runs: '3', seconds: '60' },
  cautionTexts: [],
  codeLimits: [],
  glassWeights: [],
  deliveryColumns: [],
  serviceLevel: '95',
}
