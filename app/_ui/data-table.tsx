// biome-ignore-all lint/a11y/noRedundantRoles: display:block at 390 px drops a table's meaning; explicit roles keep it
import type { ReactNode } from "react";

export type Column = {
  readonly key: string;
  readonly header: string;
  /** Set under the header, so that cells carry the number only. */
  readonly unit?: string;
  readonly align?: "number" | "text";
};

export type Row = {
  readonly key: string;
  readonly cells: Readonly<Record<string, ReactNode>>;
  /** A line at the row's edge. Give the same news as a word in a cell. */
  readonly tone?: "watch" | "bad";
};

type Props = {
  /** What the table shows; every table has one. */
  readonly caption: string;
  /** Keep the caption for screen readers only, where a heading already says it. */
  readonly captionUnseen?: boolean;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** Key of the column that names the row; the first one unless told. */
  readonly rowHeader?: string;
  readonly foot?: Row;
  /** Shown instead of the table when there are no rows: an `EmptyState`. */
  readonly empty?: ReactNode;
  /** Do not stack at 390 px but scroll sideways: for matrices that are read across. */
  readonly scrolls?: boolean;
};

type LineProps = {
  readonly row: Row;
  readonly columns: readonly Column[];
  readonly head: string | undefined;
};

/** A number, a tag or a day: never broken at its hyphens. Longer words may break before they widen a phone's page. */
const isWord = (content: ReactNode): boolean =>
  typeof content === "string" &&
  /^([A-Z][a-z]+ (?=\S*\d))?\S{1,16}$|^\d{4}-\d\d-\d\d \d\d:\d\d( UTC)?$/.test(content);

const cellOf = (content: ReactNode) => (
  <div className={isWord(content) ? "cell cell-word" : "cell"}>{content}</div>
);

function Line({ row, columns, head }: LineProps) {
  return (
    <tr role="row" data-tone={row.tone}>
      {columns.map((column) => {
        const label = column.unit ? `${column.header}, ${column.unit}` : column.header;
        const className = column.align === "number" ? "number" : undefined;
        return column.key === head ? (
          <th
            key={column.key}
            scope="row"
            role="rowheader"
            className={className}
            data-label={column.unit ? label : undefined}
          >
            {cellOf(row.cells[column.key])}
          </th>
        ) : (
          <td key={column.key} role="cell" className={className} data-label={label}>
            {cellOf(row.cells[column.key])}
          </td>
        );
      })}
    </tr>
  );
}

/** Rows of records or numbers. At 390 px each row becomes a short block with its column names. */
export function DataTable(props: Props) {
  const { columns, rows, rowHeader = columns[0]?.key, foot } = props;
  if (rows.length === 0 && props.empty) return <>{props.empty}</>;
  return (
    <div className="table-wrap">
      <table role="table" className={props.scrolls ? "table" : "table table-stacks"}>
        <caption className={props.captionUnseen ? "unseen" : undefined}>{props.caption}</caption>
        <thead role="rowgroup">
          <tr role="row">
            {columns.map((column) => (
              <th
                key={column.key}
                scope="col"
                role="columnheader"
                className={column.align === "number" ? "number" : undefined}
              >
                {column.header}
                {column.unit ? <span className="table-unit">{column.unit}</span> : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {rows.map((row) => (
            <Line key={row.key} row={row} columns={columns} head={rowHeader} />
          ))}
        </tbody>
        {foot ? (
          <tfoot role="rowgroup">
            <Line row={foot} columns={columns} head={rowHeader} />
          </tfoot>
        ) : null}
      </table>
    </div>
  );
}
