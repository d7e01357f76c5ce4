import type { CertificateContent } from "../certificate/content";
import { onlyWhatIsSaid } from "../certificate/how-written";
import type { Corrections } from "./amendment";

const itemOf = <T extends CertificateContent["item"]>(item: T, tag: string, corrections: Corrections): T =>
  item.tag === tag
    ? {
        ...item,
        serial: corrections.serial ?? item.serial,
        construction: corrections.construction ?? item.construction,
        condition: corrections.condition ?? item.condition,
      }
    : item;

/**
 * The content with exactly the named fields changed; every other word and every figure stays as it was. Of a certificate
 * of a lot, what is said of the item is said of the one it is filed under.
 */
export const applyCorrections = (
  content: CertificateContent,
  corrections: Corrections,
): CertificateContent => {
  const { customer, item, order, sets, statements } = content;
  return onlyWhatIsSaid({
    ...content,
    customer: {
      name: corrections.customerName ?? customer.name,
      addressLines: corrections.customerAddressLines ?? customer.addressLines,
      contact: corrections.customerContact ?? customer.contact,
    },
    order: { ...order, purchaseOrder: corrections.purchaseOrder ?? order.purchaseOrder },
    item: itemOf(item, item.tag, corrections),
    ...(sets ? { sets: sets.map((set) => ({ ...set, item: itemOf(set.item, item.tag, corrections) })) } : {}),
    statements: corrections.remark ? [...statements, corrections.remark] : statements,
  });
};
