import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { styles } from "./styles";
import { type Column, Table } from "./table";

type Budget = NonNullable<CertificateContent["budgets"]>[number];

const columns: readonly Column<Budget["lines"][number]>[] = [
  { header: "Contribution", width: 230, align: "text", text: ({ label }) => label },
  { header: "Distribution", width: 90, align: "text", text: ({ distribution }) => distribution },
  { header: "On the error", unit: "u, °C", width: 80, align: "number", text: (line) => line.effectCelsius },
  { header: "Share of u²", width: 70, align: "number", muted: true, text: ({ share }) => share },
];

/** Where it was asked for: what U of each result is made of. */
export const Budgets = ({ content }: { readonly content: CertificateContent }) =>
  content.budgets ? (
    <View style={{ marginTop: 14 }}>
      <Text style={[styles.strong, { fontSize: 11, marginBottom: 4 }]}>Uncertainty budgets</Text>
      {content.budgets.map((budget) => (
        <View key={`${budget.tag} ${budget.setpoint}`} style={{ marginBottom: 8 }} wrap={false}>
          <Text style={styles.strong}>
            {budget.tag} at {budget.setpoint}
          </Text>
          <Table columns={columns} rows={budget.lines} keyOf={({ label }) => label} />
          <Text style={[styles.small, { marginTop: 2 }]}>
            Combined standard uncertainty {budget.combinedCelsius} °C, k = {budget.coverageFactor}, effective
            degrees of freedom {budget.degreesOfFreedom}. Contributions of nothing are left out.
          </Text>
        </View>
      ))}
    </View>
  ) : null;
