/**
 * A name that every file system takes and nobody mistakes: control and direction signs, path and wildcard characters
 * out, no name Windows keeps for devices, no dots or spaces at the ends, at most 80 characters.
 * Rules: "Naming Files, Paths, and Namespaces" (Windows documentation), from memory.
 */
export function safeFileName(name: string): string {
  const clean = name
    .normalize('NFC')
    .replaceAll(UNSAFE, ' ')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/^[. ]+|[. ]+$/g, '')
  const short = [...clean].slice(0, 80).join('').trim()
  return short === '' ? 'site' : DEVICES.test(short) ? `site ${short}` : short
}

export const exportFileName = (siteName: string): string => `${safeFileName(siteName)}.dosewright.json`

const UNSAFE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}<>:"/\\|?*]/gu
const DEVICES = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i
