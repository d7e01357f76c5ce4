import { View } from "@react-pdf/renderer";
import type { CertificateRow } from "@/lib/domain/certificate/content";
import type { Paper } from "./paper";
import { signedSetpoint } from "./row-words";
import { Say } from "./say";
import { styles } from "./styles";
import { type Column, Table } from "./table";
import type { Said } from "./words";

type InFahrenheit = {
  readonly row: CertificateRow;
  readonly said: NonNullable<CertificateRow["fahrenheit"]>;
};

const unit: Said = ["°F"];

const columnsOf = ({ words }: Paper, rows: readonly InFahrenheit[]): readonly Column<InFahrenheit>[] => {
  const { caption } = words;
  const number = (header: Said, width: number, text: Column<InFahrenheit>["text"]): Column<InFahrenheit> => ({
    header,
    unit,
    width,
    align: "number",
    text,
  });
  return [
    {
      ...{ header: caption("setpoint"), unit: caption("asOrdered"), width: 78, align: "text" },
      text: ({ row }) => signedSetpoint(row),
    },
    number(caption("reference"), 74, ({ said }) => said.reference),
    number(caption("error"), 74, ({ said }) => said.error),
    number(caption("correction"), 74, ({ said }) => said.correction),
    { ...number(["U"], 54, ({ said }) => said.expanded), muted: true },
    ...(rows.some(({ said }) => said.tolerance !== undefined)
      ? [number(caption("tolerance"), 68, ({ said }) => said.tolerance ?? caption("noTolerance")[0])]
      : []),
    ...(rows.some(({ said }) => said.acceptance !== undefined)
      ? [number(caption("acceptance"), 80, ({ said }) => said.acceptance ?? "")]
      : []),
  ];
};

/** The same results in the unit they were ordered in; nothing where that is °C. */
export const FahrenheitTable = ({
  paper,
  rows,
}: {
  readonly paper: Paper;
  readonly rows: readonly CertificateRow[];
}) => {
  const stated = rows.flatMap((row) => (row.fahrenheit ? [{ row, said: row.fahrenheit }] : []));
  if (stated.length === 0) return null;
  const { caption } = paper.words;
  return (
    <View style={{ marginTop: 9 }} wrap={false}>
      <Say said={caption("inFahrenheit")} style={{ ...styles.strong, marginBottom: 3 }} />
      <Table columns={columnsOf(paper, stated)} rows={stated} keyOf={({ row }) => row.setpoint} />
      <Say said={caption("inFahrenheit.note")} style={{ ...styles.small, ...styles.muted, marginTop: 3 }} />
    </View>
  );
};
