interface ZoneOption {
  readonly value: string
  readonly label: string
}

/** Every time zone this computer knows, and the one in the record even if it does not. */
export function timeZones(current: string): readonly ZoneOption[] {
  const known = Intl.supportedValuesOf('timeZone')
  const all = known.includes(current) ? known : [current, ...known]
  return all.map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') }))
}
