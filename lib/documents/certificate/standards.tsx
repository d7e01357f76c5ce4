import { Text, View } from "@react-pdf/renderer";
import type { CertificateStandard } from "@/lib/domain/certificate/content";
import { Block } from "./block";
import type { OnPaper } from "./paper";
import { externalSign } from "./row-words";
import { Say } from "./say";
import { styles } from "./styles";
import { type Said, together, type Words } from "./words";

const widths = { what: 168, identity: 96 };
const routes = ["nmi", "accredited", "in-house", "other"] as const;

const routeSaid = (route: string, { caption }: Words): readonly Said[] => {
  const known = routes.find((one) => one === route);
  return known ? [caption(`route.${known}`)] : route ? [[route]] : [];
};

const Calibration = ({
  standard,
  words,
}: {
  readonly standard: CertificateStandard;
  readonly words: Words;
}) => {
  if (standard.calibrationCertificate === "") return <Say said={words.caption("ownCertificateNone")} />;
  const due: readonly Said[] = standard.dueOn ? [together(" ", words.caption("due"), [standard.dueOn])] : [];
  const said = together(", ", [standard.calibrationCertificate], [standard.performedOn], ...due);
  const beside = [standard.issuer, standard.accreditation].filter(Boolean).map((text): Said => [text]);
  return (
    <>
      <Say said={said} />
      <Say said={together(" · ", ...beside, ...routeSaid(standard.route, words))} style={styles.small} />
      {standard.documentSha256 ? (
        <Text style={[styles.hash, styles.muted]}>SHA-256 {standard.documentSha256}</Text>
      ) : null}
    </>
  );
};

const Standard = ({ standard, words }: { readonly standard: CertificateStandard; readonly words: Words }) => (
  <View style={[styles.row, { paddingVertical: 3 }]} wrap={false}>
    <View style={{ width: widths.what, paddingRight: 8 }}>
      <Say said={words.caption(`role.${standard.role}`)} style={styles.strong} />
      <Text style={styles.small}>{standard.description}</Text>
    </View>
    <View style={{ width: widths.identity, paddingRight: 8 }}>
      <Text>{standard.isExternal ? `${standard.tag} ${externalSign}` : standard.tag}</Text>
      <Text style={styles.small}>
        {words.caption("serialShort")[0]} {standard.serial}
      </Text>
      {standard.isExternal ? <Say said={words.caption("external")} style={styles.small} /> : null}
    </View>
    <View style={{ flex: 1 }}>
      <Calibration standard={standard} words={words} />
    </View>
  </View>
);

const HeadCell = ({ said, width }: { readonly said: Said; readonly width: number | null }) => (
  <View style={width === null ? { flex: 1 } : { width }}>
    <Say said={said} style={styles.headCell} lesser={{ fontSize: 6.8 }} />
  </View>
);

/** 7.8.4.1 c: how the results are metrologically traceable, standard by standard; the first stays with its title. */
export const Standards = ({ paper: { content, words } }: OnPaper) => {
  const [first, ...others] = content.standards;
  return (
    <>
      <Block title={words.caption("traceability")} isWhole>
        <Say said={words.sentence(content.traceabilityStatement)} style={{ marginBottom: 4 }} />
        <View style={styles.headRow}>
          <HeadCell said={words.caption("standard")} width={widths.what} />
          <HeadCell said={words.caption("standardIdentity")} width={widths.identity} />
          <HeadCell said={words.caption("standsOn")} width={null} />
        </View>
        {first ? <Standard standard={first} words={words} /> : null}
      </Block>
      {others.map((standard) => (
        <Standard key={`${standard.role} ${standard.tag}`} standard={standard} words={words} />
      ))}
    </>
  );
};
