import { View } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { Block } from "./block";
import type { OnPaper } from "./paper";
import { rollFigure, rollFigures, rollHeading, rollUnit } from "./roll-heading";
import { Say } from "./say";
import { styles } from "./styles";
import { type Column, Table } from "./table";
import type { Words } from "./words";

type Roll = NonNullable<CertificateContent["rolls"]>["of"][number];

const columnsOf = (roll: Roll, { caption }: Words): readonly Column<Roll["rows"][number]>[] => [
  {
    ...{ header: caption("setpoint"), unit: caption("asOrdered"), width: 90, align: "text" },
    text: ({ setpoint }) => setpoint,
  },
  ...rollFigures.map(
    ([header, key]): Column<Roll["rows"][number]> => ({
      ...{ header: caption(header), unit: [rollUnit(roll)], width: 90, align: "number" },
      text: (row) => rollFigure(row, key),
    }),
  ),
];

/** Both ends of each roll, their average and the spread: a roll is never torn over two pages. */
export const RollSummary = ({ paper: { content, words } }: OnPaper) =>
  content.rolls ? (
    <Block title={words.caption("rolls")} isWhole={content.rolls.of.length === 1}>
      {content.rolls.of.map((roll, at) => (
        <View key={roll.firstEnd.join(" ")} wrap={false} style={{ marginTop: at === 0 ? 0 : 8 }}>
          <Say said={rollHeading(roll, words)} style={{ ...styles.strong, marginBottom: 3 }} />
          <Table columns={columnsOf(roll, words)} rows={roll.rows} keyOf={({ setpoint }) => setpoint} />
        </View>
      ))}
      <View wrap={false}>
        <Say
          said={words.sentence(content.rolls.statement)}
          style={{ ...styles.small, ...styles.muted, marginTop: 4 }}
        />
      </View>
    </Block>
  ) : null;
