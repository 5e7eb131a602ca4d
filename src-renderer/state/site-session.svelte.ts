import { closedVisitsKept } from '#core/documents/closed-visits'
import type { Day, Instrument, Product, Site } from '#core/records/index'
import { computeWorksheet } from '#core/worksheet/compute'
import type { Worksheet } from '#core/worksheet/types'
import { editOf } from './history.svelte'
import type { SavedDocument } from './saved-document.svelte'
import { Session } from './session.svelte'
import type { Workspace } from './workspace.svelte'

/** One site open for work: its record, everything computed from it, and undoable, autosaved edits. */
export class SiteSession extends Session {
  readonly worksheet: Worksheet = $derived.by(() =>
    computeWorksheet({
      site: this.site,
      products: this.products,
      instruments: this.instruments,
      settings: this.settings,
      asOf: this.today,
    }),
  )

  constructor(
    workspace: Workspace,
    readonly document: SavedDocument<Site>,
  ) {
    super(workspace)
  }

  get site(): Site {
    return this.document.content
  }

  override get today(): Day {
    return this.workspace.clock.today(this.site.timeZone)
  }

  protected override get scope(): ReadonlySet<string> {
    return new Set([...super.scope, this.document.name])
  }

  /**
   * An undoable, autosaved edit of the site. Edits with equal `join` in one go become one undo step. What is closed for
   * good (a visit, an amendment) cannot be taken back: with such an edit the history of the site starts anew.
   */
  apply(label: string, change: (site: Site) => Site, join: string | null = null): void {
    const before = this.site
    this.edit(label, [editOf(this.document, change)], join)
    if (!closedVisitsKept(this.site, before).ok) this.workspace.history.forget(this.document.name)
  }

  /** An edit of the site and of the library as one undo step. */
  applyWithLibrary(
    label: string,
    changes: {
      readonly site: (site: Site) => Site
      readonly products?: (products: readonly Product[]) => readonly Product[]
      readonly instruments?: (instruments: readonly Instrument[]) => readonly Instrument[]
    },
  ): void {
    const { products, instruments } = this.workspace.library
    const parts = [
      editOf(this.document, changes.site),
      ...(changes.products === undefined ? [] : [editOf(products, changes.products)]),
      ...(changes.instruments === undefined ? [] : [editOf(instruments, changes.instruments)]),
    ]
    this.edit(label, parts, null)
  }
}
