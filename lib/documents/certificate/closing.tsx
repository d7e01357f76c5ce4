import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { Section } from "./section";
import { styles } from "./styles";

/** The laboratory's own words and number, where the content claims them. */
const Accreditation = ({ laboratory }: Pick<CertificateContent, "laboratory">) => {
  const { accreditation, accreditationNumber } = laboratory;
  return accreditation === "" && !accreditationNumber ? null : (
    <Section caption="Accreditation">
      {accreditation === "" ? null : <Text>{accreditation}</Text>}
      {accreditationNumber ? <Text>Number {accreditationNumber}</Text> : null}
    </Section>
  );
};

/** 7.8.2.1 k, l, n, o, p; 7.8.4.1 a, d; 7.8.4.3: what else must be said, who authorised it, and the end. */
export const Closing = ({
  content,
  contentHash,
}: {
  readonly content: CertificateContent;
  readonly contentHash: string;
}) => (
  <View style={{ marginTop: 8 }}>
    <Section caption="Uncertainty">
      <Text>{content.uncertaintyStatement}</Text>
    </Section>
    <Section caption="Adjustment">
      <Text>{content.adjustment}</Text>
    </Section>
    <Section caption="Deviations">
      {content.deviations.length === 0 ? (
        <Text>None from the method or the order.</Text>
      ) : (
        content.deviations.map((deviation) => <Text key={deviation}>{deviation}</Text>)
      )}
    </Section>
    {content.repeats ? (
      <Section caption="Measured again">
        {content.repeats.map((repeat) => (
          <Text key={repeat}>{repeat}</Text>
        ))}
      </Section>
    ) : null}
    <Section caption="Sampling">
      <Text>{content.sampling}</Text>
    </Section>
    <Section caption="External results">
      <Text>{content.externalResults}</Text>
    </Section>
    <Accreditation laboratory={content.laboratory} />
    <Section caption="Statements">
      {content.statements.map((statement) => (
        <Text key={statement}>{statement}</Text>
      ))}
    </Section>
    <Section caption="Computed with">
      <Text>
        Engine {content.evidence.engineVersion}, evaluation {content.evidence.evaluation} of run{" "}
        {content.run.number}
      </Text>
      <Text style={styles.small}>Inputs SHA-256 {content.evidence.inputsDigest}</Text>
      {content.evidenceStatement ? <Text>{content.evidenceStatement}</Text> : null}
      <Text style={styles.small}>Content SHA-256 {contentHash}</Text>
    </Section>
    <View wrap={false}>
      <Section caption="Authorised by">
        <Text style={[styles.strong, { fontSize: 11 }]}>{content.authorisedBy.name}</Text>
        <Text>
          {content.authorisedBy.role}, {content.authorisedBy.on}
        </Text>
        <Text style={styles.muted}>Measured by {content.performedBy}</Text>
        {content.evidence.exception === "" ? null : <Text>{content.evidence.exception}</Text>}
      </Section>
      <Text style={styles.end}>End of certificate {content.number}</Text>
    </View>
  </View>
);
