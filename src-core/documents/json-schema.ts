import { z } from 'zod'
import { siteFile } from './site-schema'

/**
 * The site file as JSON Schema (draft 2020-12), for other programs. Two rules it cannot say: ids stand once in their
 * list, and pump ids once in a site.
 */
export const siteFileJsonSchema = (): Readonly<Record<string, unknown>> => ({
  ...z.toJSONSchema(siteFile, { target: 'draft-2020-12', reused: 'ref', io: 'input' }),
  title: 'Dosewright site file, version 2',
})
