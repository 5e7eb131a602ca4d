import type { PumpUseInput } from '#core/spend/pump-use'
import { siteUse } from '#core/spend/site-use'
import type { SiteSpend } from '#core/spend/site-spend'
import type { Id, Machine, Product, Pump } from '#core/records/index'
import type { Decimal } from '#core/units/decimal'
import { formatMoney } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'
import { spendOf } from '#core/worksheet/spend-of'
import type { SiteSession } from '../../state/site-session.svelte'

/** What the cards of the spend screen share: the spend of the site, names, and how money is written. */
export class SpendDesk {
  readonly spend: SiteSpend = $derived.by(() =>
    spendOf(this.session.worksheet, {
      site: this.session.site,
      products: this.session.products,
      settings: this.session.settings,
    }),
  )
  /** what every line of the month was worked out from */
  readonly inputs: readonly PumpUseInput[] = $derived.by(
    () => siteUse(this.session.site, this.session.products, this.spend.settings, this.session.today).inputs,
  )

  constructor(readonly session: SiteSession) {}

  get sign(): DecimalSign {
    return this.session.settings.decimalSign
  }

  get currency(): string {
    return this.session.site.currency
  }

  money(amount: Decimal): string {
    return formatMoney(amount, this.currency, this.sign)
  }

  /** Money without its currency, for a column that names it. */
  amount(amount: Decimal): string {
    return this.money(amount).slice(0, -this.currency.length - 1)
  }

  pump(pumpId: Id): { readonly machine: Machine; readonly pump: Pump } | null {
    for (const machine of this.session.site.machines)
      for (const pump of machine.pumps) if (pump.id === pumpId) return { machine, pump }
    return null
  }

  product(productId: Id | null): Product | null {
    return this.session.products.find((product) => product.id === productId) ?? null
  }

  productName(productId: Id | null): string {
    return this.product(productId)?.name ?? 'No product'
  }
}
