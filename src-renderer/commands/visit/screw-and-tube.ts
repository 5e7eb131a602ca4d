import type { Id, Site, Step } from '#core/records/index'
import { changeWork, replaceOne, without, type AtPump, type Stamp } from './open-visit'

const addStep = (site: Site, at: AtPump, step: Step): Site =>
  changeWork(site, at, (work) => ({ ...work, steps: [...work.steps, step] }))

/** What was really turned, net, in eighths, clockwise positive. A turn of nothing is not a turn. */
export function recordTurn(site: Site, input: AtPump & Stamp & { readonly eighths: number }): Site {
  const { id, at, eighths } = input
  if (!Number.isInteger(eighths) || eighths === 0 || Math.abs(eighths) > 800) return site
  return addStep(site, input, { kind: 'turn', id, at, eighths })
}

/** A turn that was made the other way than it was written down: as far, in the other direction. */
export const turnedOtherWay = (site: Site, at: AtPump & { readonly stepId: Id }): Site =>
  changeWork(site, at, (work) => {
    const steps = replaceOne(
      work.steps,
      (step) => step.id === at.stepId,
      (step) => (step.kind === 'turn' ? { ...step, eighths: -step.eighths } : step),
    )
    return steps === work.steps ? work : { ...work, steps }
  })

/** The screw met resistance while going this way. */
export const recordEndStop = (
  site: Site,
  input: AtPump & Stamp & { readonly direction: 'up' | 'down' },
): Site => addStep(site, input, { kind: 'end-stop', id: input.id, at: input.at, direction: input.direction })

/** A new pump tube: what the pump did before says little about what it does now. */
export const tubeFitted = (site: Site, input: AtPump & Stamp): Site =>
  addStep(site, input, { kind: 'tube-fitted', id: input.id, at: input.at })

/** A new container: the line has to be primed again. */
export const containerChanged = (site: Site, input: AtPump & Stamp): Site =>
  addStep(site, input, { kind: 'container-changed', id: input.id, at: input.at })

/** Takes one step back out: a test, a turn, or a note of what was fitted. */
export const removeStep = (site: Site, at: AtPump & { readonly stepId: Id }): Site =>
  changeWork(site, at, (work) => {
    const steps = without(work.steps, (step) => step.id === at.stepId)
    return steps === work.steps ? work : { ...work, steps }
  })
