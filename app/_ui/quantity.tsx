import Link from "next/link";

type Props = {
  /** As printed: a string, already rounded. A number is for counts and settings, never for a reported result. */
  readonly value: string | number;
  readonly unit?: string;
  /** Expanded uncertainty U in the same unit, as printed. */
  readonly uncertainty?: string | number;
  /** Where the number opens: what it rests on. */
  readonly href?: string;
  /** Digits to reserve before and after the decimal mark, so that marks stand under each other in a column. */
  readonly align?: { readonly integer: number; readonly fraction: number };
};

const minus = (value: string | number): string => String(value).replace(/^-/, "\u2212");

function Value({ value, align }: Pick<Props, "value" | "align">) {
  const text = minus(value);
  if (!align) return <span className="quantity-value">{text}</span>;
  const mark = text.indexOf(".");
  const whole = mark < 0 ? text : text.slice(0, mark);
  const fraction = mark < 0 ? "" : text.slice(mark);
  // One digit is 1ch in a tabular face; the mark takes about half of one.
  const room = align.fraction === 0 ? undefined : { minWidth: `${align.fraction + 0.5}ch` };
  return (
    <span className="quantity-value">
      <span style={{ display: "inline-block", minWidth: `${align.integer}ch`, textAlign: "right" }}>
        {whole}
      </span>
      <span className="quantity-fraction" style={room}>
        {fraction}
      </span>
    </span>
  );
}

/** value ± U unit, set the one way it is set everywhere. In a table the unit stands in the header instead. */
export function Quantity({ value, unit, uncertainty, href, align }: Props) {
  const body = (
    <>
      <Value value={value} align={align} />
      {uncertainty === undefined ? null : <span className="quantity-u"> ± {uncertainty}</span>}
      {unit ? <span className="quantity-unit">{`\u00a0${unit}`}</span> : null}
    </>
  );
  return href ? (
    <Link className="quantity" href={href}>
      {body}
    </Link>
  ) : (
    <span className="quantity">{body}</span>
  );
}
