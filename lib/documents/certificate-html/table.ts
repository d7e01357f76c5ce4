import { figureIn } from "@/lib/domain/certificate/set-figures";
import type { Said } from "../certificate/words";
import { all, el, type Html } from "./html";
import type { Spoken } from "./speak";

export type Column<Row> = {
  readonly header: Said;
  readonly unit?: Said;
  readonly isNumber?: boolean;
  readonly cell: (row: Row) => Html | string;
};

type Table<Row> = {
  readonly caption: Html;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  /** Said in place of the figures, over the columns after the first, where a row has none. */
  readonly instead?: (row: Row) => Html | null;
};

const kindOf = (isNumber: boolean | undefined) => (isNumber ? "number" : undefined);

/** The first column names its row. Wide tables scroll by themselves, by keyboard too, and the page never does. */
export const table = <Row>(
  { say, content }: Spoken,
  { caption, columns, rows, instead }: Table<Row>,
): Html => {
  const leading = content.catalogue?.languages[0] ?? "en";
  const set = (cell: Html | string, isNumber: boolean | undefined) =>
    isNumber && typeof cell === "string" ? figureIn(leading, cell) : cell;
  const [first, ...others] = columns;
  if (!first) return all();
  const head = columns.map(({ header, unit, isNumber }) =>
    el(
      "th",
      { scope: "col", class: kindOf(isNumber) },
      say(header),
      unit ? el("small", {}, " ", say(unit)) : null,
    ),
  );
  const body = rows.map((row) => {
    const told = instead?.(row) ?? null;
    return el(
      "tr",
      {},
      el("th", { scope: "row", class: kindOf(first.isNumber) }, set(first.cell(row), first.isNumber)),
      told === null
        ? others.map(({ cell, isNumber }) => el("td", { class: kindOf(isNumber) }, set(cell(row), isNumber)))
        : el("td", { colspan: others.length }, told),
    );
  });
  return el(
    "div",
    { class: "scrolls", tabindex: 0, role: "region", "aria-label": caption.markup.replace(/<[^>]*>/g, "") },
    el("table", {}, el("caption", {}, caption), el("thead", {}, el("tr", {}, head)), el("tbody", {}, body)),
  );
};
