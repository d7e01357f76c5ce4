import type { CertificateContent } from "@/lib/domain/certificate/content";
import { Block } from "./block";
import type { OnPaper } from "./paper";
import { Say } from "./say";
import { styles } from "./styles";
import { type Column, Table } from "./table";
import type { Words } from "./words";

type Line = NonNullable<CertificateContent["budgets"]>[number]["lines"][number];

const columns = ({ caption, sentence }: Words): readonly Column<Line>[] => [
  {
    ...{ header: caption("contribution"), width: 240, align: "text" },
    ...{ text: ({ label }) => label, said: ({ label }) => sentence(label) },
  },
  {
    ...{ header: caption("distribution"), width: 100, align: "text" },
    ...{ text: ({ distribution }) => distribution, said: ({ distribution }) => sentence(distribution) },
  },
  {
    header: caption("onTheError"),
    unit: ["u, °C"],
    width: 86,
    align: "number",
    text: (line) => line.effectCelsius,
  },
  { header: caption("share"), width: 77, align: "number", muted: true, text: ({ share }) => share },
];

/** Where it was asked for: what U of each result is made of. */
export const Budgets = ({ paper: { content, words } }: OnPaper) =>
  content.budgets?.map((budget, at) => (
    <Block
      key={`${budget.tag} ${budget.setpoint}`}
      {...(at === 0 ? { title: words.caption("budgets") } : {})}
      heading={words.caption("budgets.at", { tag: budget.tag, setpoint: budget.setpoint })}
      isWhole
    >
      <Table columns={columns(words)} rows={budget.lines} keyOf={({ label }) => label} />
      <Say
        said={words.caption("budgets.note", {
          combined: budget.combinedCelsius,
          factor: budget.coverageFactor,
          degrees: budget.degreesOfFreedom,
        })}
        style={{ ...styles.small, marginTop: 2 }}
      />
    </Block>
  )) ?? null;
