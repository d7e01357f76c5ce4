import type { CertificateContent, CertificateSet } from "../certificate/content";
import { onlyWhatIsSaid } from "../certificate/how-written";
import type { Corrections } from "./amendment";
import { correctionWords } from "./correction-words";

const itemOf = <T extends CertificateContent["item"]>(item: T, tag: string, corrections: Corrections): T =>
  item.tag === tag
    ? {
        ...item,
        serial: corrections.serial ?? item.serial,
        construction: corrections.construction ?? item.construction,
        protection: correctionWords(corrections).protection ?? item.protection,
        ...(corrections.material === undefined ? {} : { material: corrections.material }),
        condition: corrections.condition ?? item.condition,
      }
    : item;

const setOf = (set: CertificateSet, tag: string, corrections: Corrections): CertificateSet => ({
  ...set,
  item: itemOf(set.item, tag, corrections),
  receivedOn: set.item.tag === tag ? (corrections.receivedOn ?? set.receivedOn) : set.receivedOn,
});

/**
 * The content with exactly the named fields changed; every other word and every figure stays as it was. Of a certificate
 * of a lot, what is said of the item is said of the one it is filed under.
 */
export const applyCorrections = (
  content: CertificateContent,
  corrections: Corrections,
): CertificateContent => {
  const { customer, item, order, receivedOn, sets, statements } = content;
  const { remark } = correctionWords(corrections);
  return onlyWhatIsSaid({
    ...content,
    customer: {
      name: corrections.customerName ?? customer.name,
      addressLines: corrections.customerAddressLines ?? customer.addressLines,
      contact: corrections.customerContact ?? customer.contact,
    },
    order: { ...order, purchaseOrder: corrections.purchaseOrder ?? order.purchaseOrder },
    item: itemOf(item, item.tag, corrections),
    ...(sets ? { sets: sets.map((set) => setOf(set, item.tag, corrections)) } : {}),
    receivedOn: corrections.receivedOn ?? receivedOn,
    statements: remark ? [...statements, remark] : statements,
  });
};
