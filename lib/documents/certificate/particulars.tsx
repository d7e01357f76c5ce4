import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { Section } from "./section";
import { styles } from "./styles";

const lines = (...parts: readonly string[]): readonly string[] => parts.filter((part) => part !== "");

const Lines = ({ of }: { readonly of: readonly string[] }) =>
  of.map((line) => <Text key={line}>{line}</Text>);

/** 7.8.2.1 e, g, h, i, j: whose, which item, in what condition, when received, measured and issued. */
export const Particulars = ({ content }: { readonly content: CertificateContent }) => {
  const { item, customer, order } = content;
  const period =
    content.performedFrom === content.performedTo
      ? content.performedFrom
      : `${content.performedFrom} to ${content.performedTo}`;
  return (
    <View>
      <Text style={styles.title}>{content.title}</Text>
      <Text style={{ fontSize: 12, marginTop: 3 }}>
        Thermocouple type {item.typeLetter}, serial number {item.serial}
      </Text>
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
          <Lines
            of={lines(
              `Type ${item.typeLetter} thermocouple, serial ${item.serial}, identity in the laboratory ${item.tag}`,
              item.construction,
              `Protection: ${item.protection}`,
              `Condition: ${item.condition}`,
              item.checks.join(" · "),
            )}
          />
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

/** 7.8.2.1 f and 7.8.4.1 b: the method, and the conditions that influence the results. */
export const MethodAndConditions = ({ content }: { readonly content: CertificateContent }) => (
  <View style={{ marginTop: 6 }}>
    <Section caption="Method">
      <Text style={styles.strong}>{content.method.name}</Text>
      <Text>{content.method.description}</Text>
    </Section>
    <Section caption="Conditions">
      <Text>
        Run {content.run.number}, {content.run.furnace}, {content.run.configuration}, place{" "}
        {content.run.place}
      </Text>
      <Lines of={content.conditions} />
    </Section>
  </View>
);
