import { Text, View } from "@react-pdf/renderer";
import { Fragment } from "react";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { isSimplified, type OnPaper } from "./paper";
import { externalSign } from "./row-words";
import { Say, SayAll } from "./say";
import { Section } from "./section";
import { styles } from "./styles";
import { inLine, type Said, together } from "./words";

/** The laboratory's own words and number, where the content claims them. */
const Accreditation = ({ paper: { content, words } }: OnPaper) => {
  const { accreditation, accreditationNumber } = content.laboratory;
  return accreditation === "" && !accreditationNumber ? null : (
    <Section caption={words.caption("accreditation")}>
      {accreditation === "" ? null : <Say said={words.sentence(accreditation)} />}
      {accreditationNumber ? (
        <Text>
          {inLine(words.caption("accreditationNumber"))} {accreditationNumber}
        </Text>
      ) : null}
    </Section>
  );
};

/** 7.8.7: apart from the results, marked as opinions, each with its basis and whose it is. */
const Opinions = ({ paper: { content, words } }: OnPaper) =>
  content.opinions ? (
    <Section caption={words.caption("opinions")} mayBreak={content.opinions.length > 4}>
      <View style={styles.opinions}>
        <Say said={words.caption("opinions.note")} style={{ ...styles.small, ...styles.muted }} />
        {content.opinions.map((opinion) => (
          <View key={opinion.text} wrap={false} style={{ marginTop: 3 }}>
            <Say said={words.sentence(opinion.text)} />
            <Say
              said={together(" ", words.caption("opinionBasis"), words.sentence(opinion.basis))}
              style={{ ...styles.small, ...styles.muted }}
            />
            <Text style={[styles.small, styles.muted]}>
              {opinion.by}, {opinion.on}
            </Text>
          </View>
        ))}
      </View>
    </Section>
  ) : null;

const Sentences = ({
  paper: { words },
  caption,
  of,
}: OnPaper & { readonly caption: Said; readonly of: readonly string[] | undefined }) =>
  of && of.length > 0 ? (
    <Section caption={caption} mayBreak={of.length > 8}>
      <SayAll of={of.map(words.sentence)} />
    </Section>
  ) : null;

/** On a simplified certificate: by which method, and which standards and which of their certificates, a line each (7.8.4.1 c). */
const BriefGrounds = ({ paper: { content, words } }: OnPaper) => (
  <>
    <Section caption={words.caption("method")}>
      <Say said={words.sentence(content.method.name)} />
    </Section>
    <Section caption={words.caption("conditions")}>
      <SayAll of={content.conditions.map(words.sentence)} />
    </Section>
    <Section caption={words.caption("traceability")}>
      <Say said={words.sentence(content.traceabilityStatement)} />
      {content.standards.map((standard) => (
        <Text key={`${standard.role} ${standard.tag}`} style={styles.small}>
          {[
            words.caption(`role.${standard.role}`)[0],
            standard.isExternal ? `${standard.tag} ${externalSign}` : standard.tag,
            standard.serial,
            standard.calibrationCertificate || words.caption("ownCertificateNone")[0],
            standard.issuer,
            standard.performedOn,
          ]
            .filter(Boolean)
            .join(" · ")}
        </Text>
      ))}
    </Section>
  </>
);

type Computed = Pick<CertificateContent, "run"> & {
  readonly evidence: Pick<CertificateContent["evidence"], "engineVersion" | "evaluation" | "inputsDigest">;
};

/** Each evaluation once: the sensors of a run share it. */
const computedOf = ({ evidence, run, sets }: CertificateContent): readonly Computed[] => [
  ...new Map((sets ?? [{ evidence, run }]).map((one) => [one.evidence.inputsDigest, one])).values(),
];

/** What the numbers were computed with. The content's own hash stands at the foot of each page. */
const ComputedWith = ({ paper: { content, words } }: OnPaper) => {
  const { catalogue, evidenceStatement } = content;
  const hash = { ...styles.hash, marginTop: 1 };
  return (
    <Section caption={words.caption("computedWith")}>
      {computedOf(content).map(({ evidence, run }) => (
        <Fragment key={evidence.inputsDigest}>
          <Say
            said={together(
              ", ",
              together(" ", words.caption("engine"), [evidence.engineVersion]),
              together(" ", words.caption("evaluation"), [String(evidence.evaluation)]),
              [run.number],
            )}
          />
          <Text style={hash}>
            {words.caption("inputsHash")[0]} {evidence.inputsDigest}
          </Text>
        </Fragment>
      ))}
      {evidenceStatement ? <Say said={words.sentence(evidenceStatement)} /> : null}
      {catalogue ? (
        <Text style={hash}>
          {words.caption("catalogue")[0]} {catalogue.version}, SHA-256 {catalogue.sha256}
        </Text>
      ) : null}
    </Section>
  );
};

/** 7.8.2.1 o and d: who authorised it, and a clear end: together, so that no page carries the end alone. */
const AuthorisedAndEnd = ({ paper: { content, words } }: OnPaper) => {
  const { authorisedBy, evidence, log, number, performedBy, sets = [] } = content;
  const performers = [...new Set([performedBy, ...sets.map((set) => set.performedBy)])];
  return (
    <View wrap={false}>
      <Section caption={words.caption("authorisedBy")}>
        <Text style={styles.blockTitle}>{authorisedBy.name}</Text>
        <Say said={together(", ", words.sentence(authorisedBy.role), [authorisedBy.on])} />
        {authorisedBy.meaning ? <Say said={words.sentence(authorisedBy.meaning)} /> : null}
        {authorisedBy.at ? (
          <Say said={together(" ", words.caption("signed"), [authorisedBy.at])} style={styles.small} />
        ) : null}
        {log ? (
          <Text style={[styles.hash, styles.muted]}>
            {inLine(words.caption("logAtSigning"))} {log.sequence},{words.isBilingual ? "\n" : " "}SHA-256{" "}
            {log.hash}
          </Text>
        ) : null}
        <Text style={styles.muted}>
          {inLine(words.caption("measuredBy"))} {performers.join(", ")}
        </Text>
        {evidence.exception === "" ? null : <Say said={words.sentence(evidence.exception)} />}
      </Section>
      <View style={styles.end}>
        <View style={styles.endRule} />
        <Text style={styles.endText}>{inLine(words.caption("endOf", { number }))}</Text>
        <View style={styles.endRule} />
      </View>
    </View>
  );
};

/** 7.8.2.1 k, l, n, o, p; 7.8.4.1 a, d; 7.8.4.3; 7.8.7: what else must be said, who authorised it, and the end. */
export const Closing = ({ paper }: OnPaper) => {
  const { content, words } = paper;
  const simplified = isSimplified(paper);
  const { caption } = words;
  const deviations = content.deviations.map(words.sentence);
  return (
    <>
      <View style={{ height: 8 }} />
      <Sentences paper={paper} caption={caption("uncertainty")} of={[content.uncertaintyStatement]} />
      {simplified ? <BriefGrounds paper={paper} /> : null}
      <Sentences paper={paper} caption={caption("adjustment")} of={[content.adjustment]} />
      <Section caption={caption("deviations")} mayBreak={deviations.length > 8}>
        <SayAll of={deviations.length === 0 ? [caption("noDeviations")] : deviations} />
      </Section>
      <Sentences paper={paper} caption={caption("exclusions")} of={content.exclusions} />
      <Sentences paper={paper} caption={caption("repeats")} of={content.repeats} />
      {simplified ? null : <Sentences paper={paper} caption={caption("sampling")} of={[content.sampling]} />}
      <Sentences paper={paper} caption={caption("externalResults")} of={[content.externalResults]} />
      <Accreditation paper={paper} />
      <Opinions paper={paper} />
      <Sentences paper={paper} caption={caption("statements")} of={content.statements} />
      {simplified ? null : <ComputedWith paper={paper} />}
      <AuthorisedAndEnd paper={paper} />
    </>
  );
};
