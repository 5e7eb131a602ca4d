/**
 * The names of all calls, apart from their schemas, so that the preload script stays a few lines without a parser in
 * it. `contract.ts` does not compile while the two lists differ.
 */
export const METHODS = [
  'host.describe',
  'sites.list',
  'sites.view',
  'sites.outlooks',
  'sites.removed',
  'portfolio.progress',
  'portfolio.view',
  'portfolio.rows',
  'portfolio.sums',
  'portfolio.orders',
  'portfolio.table',
  'portfolio.stop',
  'site.open',
  'site.create',
  'site.edit',
  'site.remove',
  'site.restore',
  'site.recover',
  'site.export',
  'site.exportRemoved',
  'site.compare',
  'site.import',
  'site.stopReading',
  'library.open',
  'library.edit',
  'library.recover',
  'settings.export',
  'settings.read',
  'backups.list',
  'backups.preview',
  'backups.restore',
  'shared.describe',
  'shared.choose',
  'shared.list',
  'shared.compare',
  'shared.take',
  'shared.publish',
  'demo.add',
  'report.savePdf',
] as const

export type Method = (typeof METHODS)[number]

/** The name of a method's own channel between a desktop window and its host. */
export const channelOf = (method: Method): string => `dosewright:${method}`
