import { Text, View } from "@react-pdf/renderer";
import { AlignedNumber } from "./paper-number";
import { styles } from "./paper-styles";

export type Column<Row> = {
  readonly header: string;
  readonly unit?: string;
  readonly width: number;
  readonly align: "number" | "text";
  readonly muted?: boolean;
  /** Room before a text that follows a column of figures, pt. */
  readonly indent?: number;
  readonly text: (row: Row) => string;
};

type TableProps<Row> = {
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  /** Said in place of the figures, over the columns after the first, where a row has none. */
  readonly instead?: (row: Row) => string | null;
};

const fontSize = 8.8;
const keyOfColumn = ({ header, unit }: { readonly header: string; readonly unit?: string }): string =>
  `${header} ${unit ?? ""}`;

/** The head repeats on each page the table reaches; a row never breaks. */
export const Table = <Row,>({ columns, rows, keyOf, instead }: TableProps<Row>) => (
  <View>
    <View style={styles.headRow} fixed>
      {columns.map((column) => (
        <View
          key={keyOfColumn(column)}
          style={{ width: column.width, paddingRight: 4, paddingLeft: column.indent ?? 0 }}
        >
          <Text style={[styles.headCell, ...(column.align === "number" ? [styles.number] : [])]}>
            {column.header}
          </Text>
          <Text style={[styles.unit, ...(column.align === "number" ? [styles.number] : [])]}>
            {column.unit ?? " "}
          </Text>
        </View>
      ))}
    </View>
    {rows.map((row) => {
      const remark = instead?.(row) ?? null;
      const shown = remark === null ? columns : columns.slice(0, 1);
      return (
        <View key={keyOf(row)} style={styles.row} wrap={false}>
          {shown.map((column) =>
            column.align === "number" ? (
              <AlignedNumber
                key={keyOfColumn(column)}
                text={column.text(row)}
                column={rows.map(column.text)}
                width={column.width}
                fontSize={fontSize}
                {...(column.muted ? { muted: true } : {})}
              />
            ) : (
              <Text
                key={keyOfColumn(column)}
                style={{ width: column.width, paddingRight: 4, paddingLeft: column.indent ?? 0 }}
              >
                {column.text(row)}
              </Text>
            ),
          )}
          {remark === null ? null : <Text style={{ flex: 1, paddingLeft: 8 }}>{remark}</Text>}
        </View>
      );
    })}
  </View>
);
