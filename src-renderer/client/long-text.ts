/** Signs that are put into JSON in one go; a few milliseconds. */
const SLICE = 1_000_000

type Flat = Readonly<Record<string, unknown>>

/** The field of a call's input that holds a long text, such as a file; null where none does. */
export function longTextIn(input: unknown): string | null {
  if (typeof input !== 'object' || input === null) return null
  return (
    Object.keys(input).find((key) => {
      const value = (input as Flat)[key]
      return typeof value === 'string' && value.length > SLICE
    }) ?? null
  )
}

/**
 * The JSON of an input with a long text, put together slice by slice, so that the window answers meanwhile. Where a
 * slice parts a pair of surrogates, JSON writes both halves as escapes, which read back as the pair.
 */
export async function bodyInSlices(
  input: unknown,
  field: string,
  breathe: () => Promise<void> = () => new Promise((go) => setTimeout(go, 0)),
): Promise<Blob> {
  const { [field]: text, ...others } = input as Flat & { readonly [field: string]: unknown }
  const long = String(text)
  const rest = JSON.stringify(others).slice(1, -1)
  const parts: BlobPart[] = [`{${rest}${rest === '' ? '' : ','}${JSON.stringify(field)}:"`]
  for (let at = 0; at < long.length; at += SLICE) {
    // a blob each: turning text into bytes takes its time, too
    parts.push(new Blob([JSON.stringify(long.slice(at, at + SLICE)).slice(1, -1)]))
    await breathe()
  }
  return new Blob([...parts, '"}'])
}

/** The text of a file, as `Blob.text` has it, read slice by slice. */
export async function textOf(file: Blob): Promise<string> {
  const decoder = new TextDecoder()
  let text = ''
  for (let at = 0; at < file.size; at += SLICE)
    text += decoder.decode(await file.slice(at, at + SLICE).arrayBuffer(), { stream: true })
  return text + decoder.decode()
}
