import Link from "next/link";
import { addressOf, changed } from "@/lib/domain/list/query";

type Props = {
  readonly path: string;
  readonly query: Readonly<Record<string, string | undefined>>;
  readonly next: string | null;
  readonly previous: string | null;
  /** What the list shows, for the name of this navigation: "orders". */
  readonly of: string;
  /** "more than 500 orders" */
  readonly total?: string;
};

/** Neighbouring pages of a list, as links; the filters stay. */
export function PageTurns({ path, query, next, previous, of, total }: Props) {
  const begun = query.after !== undefined || query.before !== undefined;
  if (next === null && previous === null && !begun)
    return total === undefined ? null : <p className="quiet">{total}</p>;
  return (
    <nav className="row" aria-label={`Pages of ${of}`}>
      {begun ? <Link href={addressOf(path, changed(query, {}))}>First page</Link> : null}
      {previous === null ? null : (
        <Link rel="prev" href={addressOf(path, changed(query, { before: previous }))}>
          Previous page
        </Link>
      )}
      {next === null ? null : (
        <Link rel="next" href={addressOf(path, changed(query, { after: next }))}>
          Next page
        </Link>
      )}
      {total === undefined ? null : <span className="quiet">{total}</span>}
    </nav>
  );
}
