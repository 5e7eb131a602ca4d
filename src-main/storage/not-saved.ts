import { fail, type Outcome } from '#core/outcome'

/** Why the system would not write, in words that finish "Not saved: ...". */
const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is used up',
  EFBIG: 'the file would be larger than the system allows',
  EROFS: 'the disk can only be read',
  EACCES: 'the data folder cannot be written by this user',
  EPERM: 'the data folder cannot be written by this user',
  EIO: 'the disk reported a fault',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  EBUSY: 'another program holds the file',
  ENOTDIR: 'the data folder is not a folder any more',
  ENOENT: 'the data folder has gone',
}

export const errorCode = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string'
    ? error.code
    : ''

/** A failed write as a problem; anything that is not the system's doing is a bug and is thrown on. */
export function notSaved(error: unknown): Outcome<never> {
  const reason = REASONS[errorCode(error)]
  if (reason !== undefined) return fail({ code: 'not-saved', reason })
  if (errorCode(error) !== '')
    return fail({ code: 'not-saved', reason: `the system said ${errorCode(error)}` })
  throw error
}
