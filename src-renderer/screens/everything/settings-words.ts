import { same } from '#core/documents/same'
import type { Settings } from '#core/records/index'
import { listed } from '../../parts/listed'

const NAMES: { readonly [K in keyof Settings]: string } = {
  repName: 'your name',
  firmName: 'your firm',
  decimalSign: 'the decimal sign',
  theme: 'light or dark',
  sheet: 'the paper',
  currency: 'the currency',
  units: 'the units',
  protocol: 'runs of a test',
  cautionTexts: 'wording of cautions',
  codeLimits: 'code limits',
  glassWeights: 'weights of the glass check',
  deliveryColumns: 'columns of delivery lists',
  serviceLevel: 'how sure stock must last',
}

/** What differs between two versions of the settings, by name. */
export const settingsWords = (mine: Settings, theirs: Settings): string =>
  listed(
    (Object.keys(NAMES) as (keyof Settings)[])
      .filter((key) => !same(mine[key], theirs[key]))
      .map((key) => NAMES[key]),
  )
