import type { Id, Site, StockMovement } from '#core/records/index'

/** Books a count or a delivery. */
export const addMovement = (site: Site, movement: StockMovement): Site => ({
  ...site,
  stock: [...site.stock, movement],
})

/** Books several at once: a list of deliveries is one step, and one undo. */
export const addMovements = (site: Site, movements: readonly StockMovement[]): Site => ({
  ...site,
  stock: [...site.stock, ...movements],
})

export const changeMovement = (
  site: Site,
  id: Id,
  change: (movement: StockMovement) => StockMovement,
): Site => ({
  ...site,
  stock: site.stock.map((movement) => (movement.id === id ? change(movement) : movement)),
})

export const removeMovement = (site: Site, id: Id): Site => ({
  ...site,
  stock: site.stock.filter((movement) => movement.id !== id),
})
