import type { Id, Site, Verification } from '#core/records/index'
import { changeWork, replaceOne, without, type AtPump } from './open-visit'

/** Writes a chemical check of the strength down beside the pump it checks. */
export const addVerification = (site: Site, at: AtPump, verification: Verification): Site =>
  changeWork(site, at, (work) => ({ ...work, verifications: [...work.verifications, verification] }))

export interface AtVerification extends AtPump {
  readonly verificationId: Id
}

export const editVerification = (
  site: Site,
  at: AtVerification,
  change: Partial<Omit<Verification, 'id' | 'at'>>,
): Site =>
  changeWork(site, at, (work) => {
    const verifications = replaceOne(
      work.verifications,
      (row) => row.id === at.verificationId,
      (row) => ({ ...row, ...change }),
    )
    return verifications === work.verifications ? work : { ...work, verifications }
  })

export const removeVerification = (site: Site, at: AtVerification): Site =>
  changeWork(site, at, (work) => {
    const verifications = without(work.verifications, (row) => row.id === at.verificationId)
    return verifications === work.verifications ? work : { ...work, verifications }
  })
