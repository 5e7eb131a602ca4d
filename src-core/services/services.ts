import type { Services } from '../contract/contract'
import type { Ports } from '../contract/ports'
import { backupServices } from './backups'
import { addDemoSites } from './demo'
import { editLibrary, exportSettings, openLibrary, readSettings, recoverLibrary } from './library'
import { portfolioServices } from './portfolio'
import { compareSite, exportRemovedSite, exportSite, importSite, stopReading } from './transfer'
import { sharedServices } from './shared'
import { siteListServices } from './site-list'
import { editSite } from './site-edit'
import { createSite, listRemoved, listSites, openSite, recoverSite, removeSite, restoreSite } from './sites'
import { describeHost, saveReport } from './host'

/** Every use case of the program over the ports given: what a host dispatches calls to. */
export const createServices = (ports: Ports): Services => ({
  'host.describe': describeHost(ports),
  'sites.list': listSites(ports),
  ...siteListServices(ports),
  'sites.removed': listRemoved(ports),
  ...portfolioServices(ports),
  'site.open': openSite(ports),
  'site.create': createSite(ports),
  'site.edit': editSite(ports),
  'site.remove': removeSite(ports),
  'site.restore': restoreSite(ports),
  'site.recover': recoverSite(ports),
  'site.export': exportSite(ports),
  'site.exportRemoved': exportRemovedSite(ports),
  'site.compare': compareSite(ports),
  'site.import': importSite(ports),
  'site.stopReading': stopReading(ports),
  'library.open': openLibrary(ports),
  'library.edit': editLibrary(ports),
  'library.recover': recoverLibrary(ports),
  'settings.export': exportSettings(ports),
  'settings.read': readSettings(),
  ...backupServices(ports),
  ...sharedServices(ports),
  'demo.add': addDemoSites(ports),
  'report.savePdf': saveReport(ports),
})
