import { Text, View } from "@react-pdf/renderer";
import { AlignedNumber } from "./aligned-number";
import { Say } from "./say";
import { styles } from "./styles";
import type { Said } from "./words";

export type Column<Row> = {
  readonly header: Said;
  /** A unit, or a word in its place. */
  readonly unit?: Said;
  readonly width: number;
  readonly align: "number" | "text";
  readonly muted?: boolean;
  /** Room before a text that follows a column of figures, pt. */
  readonly indent?: number;
  readonly text: (row: Row) => string;
  /** In place of `text`, where it is words in each language. */
  readonly said?: (row: Row) => Said;
};

type TableProps<Row> = {
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  /** Said in place of the figures, over the columns after the first, where a row has none. */
  readonly instead?: (row: Row) => Said | null;
};

const fontSize = 8.8;
const keyOfColumn = ({ header, unit }: { readonly header: Said; readonly unit?: Said }): string =>
  `${header[0]} ${unit?.[0] ?? ""}`;

const Head = <Row,>({
  columns,
  hasUnits,
}: Pick<TableProps<Row>, "columns"> & { readonly hasUnits: boolean }) => (
  <View style={styles.headRow} fixed>
    {columns.map((column) => {
      const aligned = column.align === "number" ? styles.number : {};
      return (
        <View
          key={keyOfColumn(column)}
          style={{ width: column.width, paddingRight: 4, paddingLeft: column.indent ?? 0 }}
        >
          <Say
            said={column.header}
            style={{ ...styles.headCell, ...aligned }}
            lesser={{ fontSize: 6.8, fontWeight: 400 }}
          />
          {hasUnits ? (
            <Say
              said={column.unit ?? [" "]}
              style={{ ...styles.unit, ...aligned }}
              lesser={{ fontSize: 6.4 }}
            />
          ) : null}
        </View>
      );
    })}
  </View>
);

type CellProps<Row> = {
  readonly column: Column<Row>;
  readonly row: Row;
  readonly rows: readonly Row[];
};

const Cell = <Row,>({ column, row, rows }: CellProps<Row>) =>
  column.align === "number" ? (
    <AlignedNumber
      text={column.text(row)}
      column={rows.map(column.text)}
      width={column.width}
      fontSize={fontSize}
      {...(column.muted ? { muted: true } : {})}
    />
  ) : (
    <View style={{ width: column.width, paddingRight: 4, paddingLeft: column.indent ?? 0 }}>
      {column.said ? <Say said={column.said(row)} /> : <Text>{column.text(row)}</Text>}
    </View>
  );

/** The head repeats on each page the table reaches; a row never breaks. */
export const Table = <Row,>({ columns, rows, keyOf, instead }: TableProps<Row>) => (
  <View>
    <Head columns={columns} hasUnits={columns.some(({ unit }) => unit !== undefined)} />
    {rows.map((row) => {
      const remark = instead?.(row) ?? null;
      const shown = remark === null ? columns : columns.slice(0, 1);
      return (
        <View key={keyOf(row)} style={styles.row} wrap={false}>
          {shown.map((column) => (
            <Cell key={keyOfColumn(column)} column={column} row={row} rows={rows} />
          ))}
          {remark === null ? null : (
            <View style={{ flex: 1, paddingLeft: 8 }}>
              <Say said={remark} />
            </View>
          )}
        </View>
      );
    })}
  </View>
);
