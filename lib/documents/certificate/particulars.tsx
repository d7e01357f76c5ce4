import { Text, View } from "@react-pdf/renderer";
import { Fragment } from "react";
import type { CertificateContent, CertificateSet } from "@/lib/domain/certificate/content";
import { setKindLabels } from "@/lib/domain/parts/decide-set";
import { Section } from "./section";
import { keyOfSet } from "./sets";
import { styles } from "./styles";

const lines = (...parts: readonly string[]): readonly string[] => parts.filter((part) => part !== "");

const Lines = ({ of }: { readonly of: readonly string[] }) =>
  of.map((line) => <Text key={line}>{line}</Text>);

type Item = CertificateContent["item"];

/** Each item once, however many sets it has. */
const itemsOf = ({ item, sets }: CertificateContent): readonly Item[] =>
  sets ? [...new Map(sets.map((set) => [set.item.tag, set.item])).values()] : [item];

const headline = (content: CertificateContent): string => {
  const items = itemsOf(content);
  return items.length === 1
    ? `Thermocouple type ${content.item.typeLetter}, serial number ${content.item.serial}`
    : `${items.length} thermocouples type ${content.item.typeLetter}, serial numbers ${items.map(({ serial }) => serial).join(", ")}`;
};

const itemLines = (item: Item): readonly string[] =>
  lines(
    `Type ${item.typeLetter} thermocouple, serial ${item.serial}, identity in the laboratory ${item.tag}`,
    item.construction,
    item.material ?? "",
    `Protection: ${item.protection}`,
    `Condition: ${item.condition}`,
    item.checks.join(" · "),
  );

/** 7.8.2.1 e, g, h, i, j: whose, which item, in what condition, when received, measured and issued. */
export const Particulars = ({ content }: { readonly content: CertificateContent }) => {
  const { customer, order } = content;
  const period =
    content.performedFrom === content.performedTo
      ? content.performedFrom
      : `${content.performedFrom} to ${content.performedTo}`;
  return (
    <View>
      <Text style={styles.title}>{content.title}</Text>
      <Text style={{ fontSize: 12, marginTop: 3 }}>{headline(content)}</Text>
      <View style={{ marginTop: 6 }}>
        <Section caption="Customer">
          <Lines of={lines(customer.name, customer.addressLines.join(", "), customer.contact)} />
        </Section>
        <Section caption="Order">
          <Text>
            {order.number}
            {order.purchaseOrder ? `, purchase order ${order.purchaseOrder}` : ""}
          </Text>
        </Section>
        <Section caption="Item">
          {itemsOf(content).map((item) => (
            <Fragment key={item.tag}>
              <Lines of={itemLines(item)} />
            </Fragment>
          ))}
        </Section>
        <Section caption="Dates">
          <Text>
            Received {content.receivedOn} · measured {period} · issued {content.issuedOn}
          </Text>
        </Section>
        <Section caption="Place">
          <Text>{content.laboratory.placeOfPerformance}</Text>
        </Section>
      </View>
    </View>
  );
};

/** What all sets share is said with the first of them. */
const setConditions = (
  set: CertificateSet,
  at: number,
  sets: readonly CertificateSet[],
): readonly string[] => [
  `${set.item.tag}, ${setKindLabels[set.kind].toLowerCase()}: run ${set.run.number}, ${set.run.furnace}, ${set.run.configuration}, place ${set.run.place}`,
  ...set.conditions.filter((line) => at === 0 || !sets[0]?.conditions.includes(line)),
];

/** 7.8.2.1 f and 7.8.4.1 b: the method, and the conditions that influence the results. */
export const MethodAndConditions = ({ content }: { readonly content: CertificateContent }) => (
  <View style={{ marginTop: 6 }}>
    <Section caption="Method">
      <Text style={styles.strong}>{content.method.name}</Text>
      <Text>{content.method.description}</Text>
    </Section>
    <Section caption="Conditions">
      {content.sets ? (
        content.sets.map((set, at, sets) => (
          <Fragment key={keyOfSet(set)}>
            <Lines of={setConditions(set, at, sets)} />
          </Fragment>
        ))
      ) : (
        <>
          <Text>
            Run {content.run.number}, {content.run.furnace}, {content.run.configuration}, place{" "}
            {content.run.place}
          </Text>
          <Lines of={content.conditions} />
        </>
      )}
    </Section>
  </View>
);
