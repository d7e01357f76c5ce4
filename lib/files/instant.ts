/** An ISO 8601 moment with its zone, as microseconds since 1970-01-01T00:00:00Z (an exact integer below 2^53). */
export type InstantText =
  | { readonly kind: "instant"; readonly microseconds: number }
  | { readonly kind: "no-zone" }
  | { readonly kind: "too-fine" }
  | { readonly kind: "not-an-instant" };

const shape =
  /^(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):(\d{2}):(\d{2})(?:[.,](\d+))?\s*(Z|[+-]\d{2}(?::?\d{2})?)?$/i;

const offsetMinutes = (zone: string): number | null => {
  if (zone.toUpperCase() === "Z") return 0;
  const hours = Number(zone.slice(1, 3));
  const minutes = Number(zone.slice(3).replace(":", "") || "0");
  if (hours > 14 || minutes > 59) return null;
  return (zone.startsWith("-") ? -1 : 1) * (hours * 60 + minutes);
};

export const instant = (written: string): InstantText => {
  const match = shape.exec(written.trim());
  if (!match) return { kind: "not-an-instant" };
  const [year, month, day, hour, minute, second] = match.slice(1, 7).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const local = new Date(Date.UTC(year, month - 1, day, hour, minute, second));
  // Date.UTC rolls 30 February over into March; a moment that is not on the calendar is not read as another one.
  if (local.getUTCFullYear() !== year || local.getUTCMonth() !== month - 1 || local.getUTCDate() !== day)
    return { kind: "not-an-instant" };
  if (hour > 23 || minute > 59 || second > 59) return { kind: "not-an-instant" };
  const zone = match[8];
  if (zone === undefined) return { kind: "no-zone" };
  const offset = offsetMinutes(zone);
  if (offset === null) return { kind: "not-an-instant" };
  const fraction = match[7] ?? "";
  if (fraction.length > 6) return { kind: "too-fine" };
  return {
    kind: "instant",
    microseconds: local.getTime() * 1000 - offset * 60_000_000 + Number(fraction.padEnd(6, "0")),
  };
};
