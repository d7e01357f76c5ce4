import { Text, View } from "@react-pdf/renderer";
import type { OfferContent } from "@/lib/domain/quotation/content";
import { paperTitles } from "@/lib/domain/quotation/point-words";
import { OfferLines } from "./offer-lines";
import { OfferPrice } from "./offer-price";
import { Lines, Paper } from "./paper";
import { Section } from "./paper-section";
import { styles } from "./paper-styles";

/** 7.1.3 and 7.1.5: what is agreed before anything is measured. */
const Terms = ({ content }: { readonly content: OfferContent }) => (
  <View>
    <Section caption="Decision rule">
      <Text style={styles.strong}>{content.rule.name}</Text>
      <Text>{content.rule.plain}</Text>
      {content.rule.agreement ? <Text>{content.rule.agreement}</Text> : null}
    </Section>
    <Section caption="Method">
      <Text>{content.method}</Text>
    </Section>
    {content.remarks.length > 0 ? (
      <Section caption="Please note">
        <Lines of={content.remarks} />
      </Section>
    ) : null}
  </View>
);

const Closing = ({ content }: { readonly content: OfferContent }) => (
  <View>
    <Section caption="Delivery">
      <Text>{content.delivery}</Text>
    </Section>
    {content.validUntil ? (
      <Section caption="Valid">
        <Text>
          Until {content.validUntil}. You agree with the link of our mail, in the portal, or by writing to the
          desk; please name your purchase order.
        </Text>
      </Section>
    ) : null}
    {content.laboratory.accreditation ? (
      <Section caption="Accreditation">
        <Text>{content.laboratory.accreditation}</Text>
      </Section>
    ) : null}
  </View>
);

export const OfferDocument = ({ content }: { readonly content: OfferContent }) => {
  const title = paperTitles[content.kind];
  const { customer, order } = content;
  return (
    <Paper
      title={title}
      number={content.number}
      on={content.on}
      laboratory={content.laboratory}
      subject={`Order ${order.number}`}
    >
      <Text style={styles.title}>{title}</Text>
      <Text style={{ fontSize: 12, marginTop: 3 }}>
        {content.kind === "quotation"
          ? `For your order ${order.number}`
          : `Order ${order.number} is accepted`}
      </Text>
      <View style={{ marginTop: 6 }}>
        <Section caption="Customer">
          <Lines of={[customer.name, customer.addressLines.join(", "), customer.contactName]} />
        </Section>
        <Section caption="Date">
          <Text>
            {content.on}
            {order.purchaseOrder ? ` · your purchase order ${order.purchaseOrder}` : ""}
            {order.urgency === "express" ? " · express" : ""}
          </Text>
        </Section>
      </View>
      <OfferLines lines={content.lines} />
      <Terms content={content} />
      {content.price ? <OfferPrice price={content.price} /> : null}
      <Closing content={content} />
    </Paper>
  );
};
