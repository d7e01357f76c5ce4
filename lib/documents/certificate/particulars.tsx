import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { AmendmentNotice } from "./amendment-notice";
import { Facts } from "./facts";
import { headline, itemsOf, OneItem, SeveralItems } from "./items";
import type { OnPaper, Paper } from "./paper";
import { Say } from "./say";
import { Section } from "./section";
import { styles } from "./styles";
import type { Said } from "./words";

const period = ({ content, words }: Paper): Said =>
  content.performedFrom === content.performedTo
    ? [content.performedFrom]
    : words.caption("period", { from: content.performedFrom, to: content.performedTo });

/** h: each day on which some of the items came in. */
const receivedOn = ({ receivedOn: first, sets = [] }: CertificateContent): string =>
  [...new Set([first, ...sets.map((set) => set.receivedOn)])].toSorted().join(", ");

/** 7.8.2.1 a, e, g, h, i, j, c: what it is, whose, which item, in what condition, when and where. */
export const Particulars = ({ paper }: OnPaper) => {
  const { content, words } = paper;
  const { customer, order } = content;
  const isOne = itemsOf(content).length === 1;
  return (
    <>
      <View style={{ paddingRight: content.laboratory.accreditationMark ? 110 : 0 }}>
        <Say
          said={words.sentence(content.title)}
          style={styles.title}
          lesser={{ fontSize: 13, marginTop: 1 }}
        />
        <Say
          said={headline(paper)}
          style={{ fontSize: 12, marginTop: 4, lineHeight: 1.3 }}
          lesser={{ fontSize: 10, marginTop: 0 }}
        />
      </View>
      {words.isBilingual ? (
        <Say
          said={words.caption("languageNote")}
          style={{ ...styles.small, ...styles.muted, marginTop: 2 }}
        />
      ) : null}
      <AmendmentNotice paper={paper} />
      <View style={{ height: 4 }} />
      <Section caption={words.caption("customer")}>
        <Text style={styles.strong}>{customer.name}</Text>
        <Text>{[customer.addressLines.join(", "), customer.contact].join(" · ")}</Text>
      </Section>
      <Section caption={words.caption("order")}>
        <Facts
          of={[
            [null, [order.number]],
            ...(order.purchaseOrder
              ? [[words.caption("purchaseOrder"), [order.purchaseOrder], "strong"] as const]
              : []),
          ]}
        />
      </Section>
      <Section caption={words.caption(isOne ? "item" : "items")} mayBreak={!isOne}>
        {isOne ? <OneItem paper={paper} /> : <SeveralItems paper={paper} />}
      </Section>
      <Section caption={words.caption("dates")}>
        <Facts
          of={[
            [words.caption("received"), [receivedOn(content)]],
            [words.caption("measured"), period(paper)],
            [words.caption("issued"), [content.issuedOn]],
          ]}
        />
      </Section>
      <Section caption={words.caption("place")}>
        <Say said={words.sentence(content.laboratory.placeOfPerformance)} />
      </Section>
      {content.formStatement ? (
        <Section caption={words.caption("form")}>
          <Say said={words.sentence(content.formStatement)} />
        </Section>
      ) : null}
    </>
  );
};
