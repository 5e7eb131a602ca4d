import { fail, ok } from '../outcome'
import type { Service } from './service'

export const describeHost: Service<'host.describe'> =
  ({ host }) =>
  async () =>
    ok(host.describe())

export const saveReport: Service<'report.savePdf'> =
  ({ host }) =>
  async ({ title, sheet }) =>
    host.savePdf === null
      ? fail({ code: 'unavailable', what: 'this window saves a PDF through its own print command' })
      : host.savePdf(title, sheet)
