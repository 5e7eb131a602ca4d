/** Leads to a box: opens what hides it, brings it into view, puts the keyboard there. */
export function focusField(id: string): void {
  const field = document.getElementById(id)
  if (field === null) return
  for (
    let folded = field.closest('details');
    folded !== null;
    folded = folded.parentElement?.closest('details') ?? null
  )
    folded.open = true
  field.scrollIntoView({ block: 'center' })
  field.focus({ preventScroll: true })
}
