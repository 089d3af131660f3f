const formatters = new Map<string, Intl.DateTimeFormat>();

/**
 * Offset of a zone from UTC at an instant, in minutes, east positive.
 *
 * @param utcMs UTC milliseconds since the epoch.
 * @param zone IANA zone.
 * @throws RangeError for a zone that the runtime does not know.
 */
export function offsetMinutes(utcMs: number, zone: string): number {
  const parts = formatter(zone).formatToParts(utcMs);
  const part = (name: string): number => Number(parts.find(({ type }) => type === name)?.value);
  const wallMs = Date.UTC(
    part('year'),
    part('month') - 1,
    part('day'),
    part('hour'),
    part('minute'),
    part('second'),
  );
  return Math.round((wallMs - Math.floor(utcMs / 1000) * 1000) / 60_000);
}

/** Making a formatter costs a hundred times more than using it. */
function formatter(zone: string): Intl.DateTimeFormat {
  const known = formatters.get(zone);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat('en-US-u-ca-iso8601-nu-latn', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  formatters.set(zone, made);
  return made;
}
