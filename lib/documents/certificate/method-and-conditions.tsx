import { View } from "@react-pdf/renderer";
import { Fragment } from "react";
import type { CertificateSet } from "@/lib/domain/certificate/content";
import type { OnPaper } from "./paper";
import { Say, SayAll } from "./say";
import { Section } from "./section";
import { keyOfSet } from "./sets";
import { styles } from "./styles";
import { type Said, together, type Words } from "./words";

type Run = CertificateSet["run"];

const runSaid = ({ number, furnace, configuration, place }: Run, { caption }: Words): Said =>
  together(
    ", ",
    together(" ", caption("run"), [number]),
    [furnace],
    [configuration],
    together(" ", caption("furnacePlace"), [place]),
  );

/** What all sets share is said with the first of them. */
const OfSets = ({ sets, words }: { readonly sets: readonly CertificateSet[]; readonly words: Words }) =>
  sets.map((set, at) => (
    <Fragment key={keyOfSet(set)}>
      <Say
        said={together(
          ": ",
          together(", ", [set.item.tag], words.caption(`set.${set.kind}`)),
          runSaid(set.run, words),
        )}
      />
      <SayAll
        of={set.conditions
          .filter((line) => at === 0 || !sets[0]?.conditions.includes(line))
          .map(words.sentence)}
      />
    </Fragment>
  ));

/** 7.8.2.1 f and 7.8.4.1 b: the method, the conditions that influence the results, and what heat the item has seen. */
export const MethodAndConditions = ({ paper: { content, words } }: OnPaper) => (
  <>
    <View style={{ height: 6 }} />
    <Section caption={words.caption("method")}>
      <Say said={words.sentence(content.method.name)} style={styles.strong} />
      <Say said={words.sentence(content.method.description)} />
    </Section>
    <Section caption={words.caption("conditions")} mayBreak={(content.sets?.length ?? 0) > 6}>
      {content.sets ? (
        <OfSets sets={content.sets} words={words} />
      ) : (
        <>
          <Say said={runSaid(content.run, words)} />
          <SayAll of={content.conditions.map(words.sentence)} />
        </>
      )}
    </Section>
    {content.thermalHistory ? (
      <Section caption={words.caption("thermalHistory")}>
        <SayAll of={content.thermalHistory.map(words.sentence)} />
      </Section>
    ) : null}
  </>
);
