/** Rows of a list's page; and where counting stops, since nobody reads "8 214" off a list but "more than 500". */
export const pageSize = 50;
export const countedUpTo = 500;
/** On a telephone, one column: fewer rows. */
export const portalPageSize = 20;
/** Orders for invoicing: each is priced anew while the page is made. */
export const pricedPageSize = 20;

/** Which page: by the name of the row it begins behind or ends before, so that it stands still while rows are added. */
export type Turn =
  | { readonly kind: "first" }
  | { readonly kind: "after"; readonly anchor: string }
  | { readonly kind: "before"; readonly anchor: string };

export const turnOf = (query: { readonly after?: string; readonly before?: string }): Turn => {
  if (query.after) return { kind: "after", anchor: query.after };
  return query.before ? { kind: "before", anchor: query.before } : { kind: "first" };
};

/** Rows of this side of the anchor, of a list that goes down by number. */
export const besideAnchor = (
  turn: Turn,
): { readonly number?: { readonly lt?: string; readonly gt?: string } } => {
  if (turn.kind === "first") return {};
  return { number: turn.kind === "after" ? { lt: turn.anchor } : { gt: turn.anchor } };
};

export type Page<R> = {
  readonly rows: readonly R[];
  /** Anchors of the neighbouring pages; null = there is none. */
  readonly next: string | null;
  readonly previous: string | null;
};

/**
 * Cuts a page from rows asked for with one more than fits. A page before an anchor is asked for backwards: its rows come
 * nearest first, and are turned round.
 */
export const cutPage = <R>(
  found: readonly R[],
  turn: Turn,
  nameOf: (row: R) => string,
  size = pageSize,
): Page<R> => {
  const more = found.length > size;
  const kept = found.slice(0, size);
  const rows = turn.kind === "before" ? kept.reverse() : kept;
  const [first, last] = [rows.at(0), rows.at(-1)];
  const nextOpen = turn.kind === "before" || more;
  const previousOpen = turn.kind === "before" ? more : turn.kind === "after";
  return {
    rows,
    next: nextOpen && last !== undefined ? nameOf(last) : null,
    previous: previousOpen && first !== undefined ? nameOf(first) : null,
  };
};

/**
 * Cuts a page from rows that are all there, in an order of their own. Where the anchor has gone since, the first page
 * is shown.
 */
export const cutSorted = <R>(
  sorted: readonly R[],
  turn: Turn,
  nameOf: (row: R) => string,
  size = pageSize,
): Page<R> => {
  const at = turn.kind === "first" ? -1 : sorted.findIndex((row) => nameOf(row) === turn.anchor);
  if (turn.kind === "first" || at === -1)
    return cutPage(sorted.slice(0, size + 1), { kind: "first" }, nameOf, size);
  const nearest =
    turn.kind === "after"
      ? sorted.slice(at + 1, at + size + 2)
      : sorted.slice(Math.max(0, at - size - 1), at).reverse();
  return cutPage(nearest, turn, nameOf, size);
};

/** "12", and past the limit "more than 500". */
export const countText = (count: number): string =>
  count > countedUpTo ? `more than ${countedUpTo}` : String(count);

/** The same where there is little room. */
export const shortCount = (count: number): string =>
  count > countedUpTo ? `${countedUpTo}+` : String(count);
