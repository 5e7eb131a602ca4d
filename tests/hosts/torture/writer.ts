import type { Call } from '#core/contract/contract'
import { difference } from '#core/documents/changes'
import type { Site } from '#core/records/index'
import { visit } from '../../contract/sample-site'
import { uuidFrom } from './random'

/** What the client knows about one site: the last version that was acknowledged, and one it got no answer for. */
export interface Known {
  acknowledged: Site
  unanswered: Site | null
  edits: number
  refused: number
}

/** Edits one site as fast as it is answered, until the host is gone. A refused save changes nothing. */
export async function keepEditing(call: Call, known: Known, random: () => number): Promise<void> {
  const opened = await call('site.open', { id: known.acknowledged.id })
  if (!opened.ok) return
  let { revision } = opened.value
  for (;;) {
    const next = edited(known.acknowledged, random)
    known.unanswered = next
    const saved = await call('site.edit', {
      id: next.id,
      base: revision,
      changes: difference(known.acknowledged, next),
    })
    if (!saved.ok && saved.problem.code === 'host-gone') return
    known.unanswered = null
    if (saved.ok) {
      known.acknowledged = next
      known.edits += 1
      revision = saved.value.revision
    } else if (saved.problem.code === 'not-saved') {
      known.refused += 1
      await new Promise((resolve) => setTimeout(resolve, 5))
    } else throw new Error(`an edit was refused: ${JSON.stringify(saved.problem)}`)
  }
}

/** A site a little changed: notes of any length, a visit more, the oldest open visit less. */
function edited(site: Site, random: () => number): Site {
  const dice = random()
  if (dice < 0.5) return { ...site, notes: uuidFrom(random).repeat(1 + Math.floor(random() * 100)) }
  if (dice < 0.8 && site.visits.length < 12)
    return { ...site, visits: [...site.visits, visit(uuidFrom(random), null, { id: uuidFrom(random) })] }
  if (site.visits.length > 0) return { ...site, visits: site.visits.slice(1) }
  return { ...site, visitEveryDays: String(1 + Math.floor(random() * 90)) }
}
