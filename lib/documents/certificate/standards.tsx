import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent, CertificateStandard } from "@/lib/domain/certificate/content";
import { routeLabels, standardRoleLabels } from "@/lib/domain/certificate/labels";
import { styles } from "./styles";

const Standard = ({ standard }: { readonly standard: CertificateStandard }) => (
  <View style={[styles.row, { paddingVertical: 3 }]} wrap={false}>
    <View style={{ width: 168, paddingRight: 8 }}>
      <Text style={styles.strong}>{standardRoleLabels[standard.role]}</Text>
      <Text style={styles.small}>{standard.description}</Text>
    </View>
    <View style={{ width: 96, paddingRight: 8 }}>
      <Text>{standard.tag}</Text>
      <Text style={styles.small}>serial {standard.serial}</Text>
    </View>
    <View style={{ flex: 1 }}>
      {standard.calibrationCertificate === "" ? (
        <Text>No certificate of its own; bounded by a stated limit</Text>
      ) : (
        <>
          <Text>
            {standard.calibrationCertificate}
            {standard.dueOn
              ? `, ${standard.performedOn}, due ${standard.dueOn}`
              : `, ${standard.performedOn}`}
          </Text>
          <Text style={styles.small}>
            {[standard.issuer, standard.accreditation, routeLabels[standard.route] ?? standard.route]
              .filter(Boolean)
              .join(" · ")}
          </Text>
        </>
      )}
    </View>
  </View>
);

/** 7.8.4.1 c: how the results are metrologically traceable, standard by standard. */
export const Standards = ({ content }: { readonly content: CertificateContent }) => (
  <View style={{ marginTop: 14 }}>
    <View wrap={false}>
      <Text style={[styles.strong, { fontSize: 11 }]}>Traceability</Text>
      <Text style={{ marginTop: 2, marginBottom: 3 }}>{content.traceabilityStatement}</Text>
      <View style={styles.headRow}>
        <Text style={[styles.headCell, { width: 168 }]}>Standard or instrument</Text>
        <Text style={[styles.headCell, { width: 96 }]}>Identity</Text>
        <Text style={[styles.headCell, { flex: 1 }]}>Calibration it stands on</Text>
      </View>
    </View>
    {content.standards.map((standard) => (
      <Standard key={`${standard.role} ${standard.tag}`} standard={standard} />
    ))}
  </View>
);
