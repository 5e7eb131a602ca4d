/**
 * A dotted path in a record as a person would say it: `site.machines.1.pumps.0.window.low` becomes
 * "machine 2, pump 1, window, low". Text that is no path (a line and column) passes unchanged.
 */
export function placeName(path: string): string {
  if (/^line \d/.test(path)) return path
  const words: string[] = []
  const parts = path.split('.').filter((part) => part !== '')
  const telling = parts.filter((part) => !SILENT.has(part))
  // a place that is nothing but grouping is named all the same: a file may lack its very "site"
  for (const part of telling.length > 0 ? telling : parts.slice(-1)) {
    const last = words.at(-1)
    if (/^\d+$/.test(part)) {
      const item = `${last === undefined ? 'item' : (ITEM[last] ?? `${last} item`)} ${Number(part) + 1}`
      if (last === undefined) words.push(item)
      else words[words.length - 1] = item
    } else words.push(part)
  }
  return words.map((word) => NAMES[word] ?? spaced(word)).join(', ')
}

/** The last and most telling part of the place, for a problem shown beside its own field. */
export const fieldName = (path: string): string => placeName(path.replace(/\.(?:value|unit)$/, ''))

/** Parts that only group others and tell a person nothing. */
const SILENT: ReadonlySet<string> = new Set(['site', 'value', 'dataPlate', 'calendar', 'input'])

const ITEM: Readonly<Record<string, string>> = {
  machines: 'machine',
  pumps: 'pump',
  visits: 'visit',
  work: 'pump work',
  steps: 'step',
  runs: 'run',
  checks: 'check',
  readings: 'reading',
  verifications: 'strength check',
  cautions: 'caution',
  advice: 'advice',
  amendments: 'amendment',
  stock: 'stock entry',
  snapshots: 'kept set-up',
  scenarios: 'what-if',
  glassChecks: 'glass check',
  added: 'added machine',
  answers: 'answer',
  closures: 'closed period',
  seasons: 'season',
  products: 'product',
  instruments: 'instrument',
  prices: 'price row',
  changes: 'change',
}

const NAMES: Readonly<Record<string, string>> = {
  id: 'id',
  by: 'who made it',
  at: 'time',
  machineOrder: 'order of the machines',
  movedAt: 'time of the move',
  on: 'day',
  from: 'first day',
  to: 'last day',
  startedAt: 'start of the visit',
  start: 'reading before',
  end: 'reading after',
  doseSeconds: 'seconds per rack',
  doseSecondsSpread: 'spread of the seconds per rack',
  initialChargeSeconds: 'initial-charge seconds',
  productId: 'product',
  instrumentId: 'instrument',
  pumpId: 'pump',
  machineId: 'machine',
  setupId: 'kept set-up',
  visitId: 'visit',
  window: 'target window',
  low: 'low limit',
  high: 'high limit',
  perRack: 'water per rack',
  rinse: 'final rinse',
  wash: 'wash tank',
  heel: 'water left in the sump',
  fill: 'fill',
  carriedOut: 'water carried out',
  upstream: 'second tank',
  drainAndFillsPerDay: 'drain-and-fills per day',
  washTemperatureMin: 'data plate wash temperature',
  rinseTemperatureMin: 'data plate lowest rinse temperature',
  rinseTemperatureMax: 'data plate highest rinse temperature',
  rinsePressureMin: 'data plate lowest rinse pressure',
  rinsePressureMax: 'data plate highest rinse pressure',
  perMinute: 'turns per minute',
  fittedOn: 'fitted on',
  outsideDiameter: 'outside diameter',
  setBy: 'how it is set',
  screwStops: 'screw travel left',
  up: 'upwards',
  down: 'downwards',
  solids: 'dissolved solids',
  growthPercentPerYear: 'growth per year',
  visitEveryDays: 'days between visits',
  fullContainers: 'full containers',
  part: 'part container',
  eighths: 'eighths turned',
  excluded: 'why the run does not count',
  measuredOn: 'measured on',
  deliveredOn: 'delivered on',
  shelfLifeDays: 'shelf life',
  leadTimeDays: 'delivery time',
  labelLimits: 'label limits',
  repName: 'your name',
  firmName: 'name of the firm',
  protocol: 'usual test',
  serviceLevel: 'how sure the stock must last',
  format: 'format name',
}

/** `racksPerDay` as "racks per day"; pH stays pH. */
const spaced = (word: string): string =>
  word === 'pH'
    ? word
    : word
        .replaceAll(/([a-z\d])([A-Z])/g, '$1 $2')
        .replaceAll('-', ' ')
        .replaceAll(/\b[A-Z](?=[a-z])/g, (letter) => letter.toLowerCase())
