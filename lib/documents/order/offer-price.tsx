import { Text, View } from "@react-pdf/renderer";
import { groupedMoney } from "@/lib/domain/price/money";
import type { OfferContent } from "@/lib/domain/quotation/content";
import { Section } from "./paper-section";
import { styles } from "./paper-styles";

type Price = NonNullable<OfferContent["price"]>;

const widths = { title: 205, quantity: 50, unit: 70, amount: 80 } as const;

const Figure = ({
  width,
  text,
  strong,
}: {
  readonly width: number;
  readonly text: string;
  readonly strong?: boolean;
}) => (
  <Text style={[styles.number, { width, paddingRight: 4 }, ...(strong ? [styles.strong] : [])]}>{text}</Text>
);

const words = ({ title, position }: Price["lines"][number]): string =>
  position === null ? title : `${title}, line ${position}`;

/** Quantity × price = amount, a row each, and the sum. */
export const OfferPrice = ({ price }: { readonly price: Price }) => {
  const money = (minor: number) => groupedMoney(minor, price.currency);
  return (
    <Section caption="Price" mayBreak>
      <View style={styles.headRow} minPresenceAhead={40}>
        <Text style={[styles.headCell, { width: widths.title }]}>What</Text>
        <Text style={[styles.headCell, styles.number, { width: widths.quantity, paddingRight: 4 }]}>
          Quantity
        </Text>
        <Text style={[styles.headCell, styles.number, { width: widths.unit, paddingRight: 4 }]}>Price</Text>
        <Text style={[styles.headCell, styles.number, { width: widths.amount, paddingRight: 4 }]}>
          {`Amount, ${price.currency}`}
        </Text>
      </View>
      {price.lines.map((line) => (
        <View key={`${line.key} ${line.per} ${line.position} ${line.title}`} style={styles.row} wrap={false}>
          <Text style={{ width: widths.title, paddingRight: 4 }}>{words(line)}</Text>
          <Figure width={widths.quantity} text={String(line.quantity)} />
          <Figure width={widths.unit} text={money(line.unitAmount)} />
          <Figure width={widths.amount} text={money(line.amount)} />
        </View>
      ))}
      <View style={[styles.row, { borderBottomWidth: 0 }]} wrap={false}>
        <Text style={[styles.strong, { width: widths.title + widths.quantity + widths.unit }]}>
          Sum, without tax
        </Text>
        <Figure width={widths.amount} text={money(price.total)} strong />
      </View>
    </Section>
  );
};
