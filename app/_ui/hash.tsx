type Props = {
  readonly value: string;
  /** Characters shown before opening. */
  readonly length?: number;
  /** What it is the hash of, for screen readers. */
  readonly label?: string;
};

/** A hash: short at first, whole when opened, one click selects all of it. */
export function Hash({ value, length = 12, label = "Hash" }: Props) {
  if (value.length <= length) return <code className="hash">{value}</code>;
  return (
    <details className="hash">
      <summary title={value}>
        <span className="unseen">{label} </span>
        {value.slice(0, length)}…
      </summary>
      <code>{value}</code>
    </details>
  );
}
