/** The text without the field's own unit at its end, if the person typed that too: "12 %" in a % field. */
export function withoutUnit(text: string, unit: string): string {
  const plain = unit.trim().toLowerCase()
  const trimmed = text.trimEnd()
  if (plain === '' || !trimmed.toLowerCase().endsWith(plain)) return text
  return trimmed.slice(0, trimmed.length - plain.length)
}
