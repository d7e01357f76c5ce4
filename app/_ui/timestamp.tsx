type Props = {
  /** ISO 8601 or a Date. */
  readonly at: string | Date;
  /** day: 2026-03-04; minute: 2026-03-04 09:12 UTC; second: with seconds. */
  readonly precision?: "day" | "minute" | "second";
};

/** One form everywhere, UTC, so that a record reads the same at each bench. A bare date has no time to show. */
export function Timestamp({ at, precision = "minute" }: Props) {
  if (typeof at === "string" && /^\d{4}-\d{2}-\d{2}$/.test(at))
    return (
      <time dateTime={at} style={{ whiteSpace: "nowrap" }}>
        {at}
      </time>
    );
  const date = typeof at === "string" ? new Date(at) : at;
  if (Number.isNaN(date.getTime())) return <span>{String(at)}</span>;
  const iso = date.toISOString();
  const shown =
    precision === "day"
      ? iso.slice(0, 10)
      : `${iso.slice(0, 10)} ${iso.slice(11, precision === "minute" ? 16 : 19)} UTC`;
  return (
    <time dateTime={iso} title={iso} style={{ whiteSpace: "nowrap" }}>
      {shown}
    </time>
  );
}
