import type { CertificateContent } from "../certificate/content";
import type { Corrections } from "./amendment";

/** What a certificate says now in each field that an amendment can correct; empty: nothing. Of a lot, of the item it is filed under. */
export const saidNow = (content: CertificateContent): Readonly<Record<keyof Corrections, string>> => {
  const { customer, item, order, receivedOn } = content;
  return {
    customerName: customer.name,
    customerAddressLines: customer.addressLines.join(", "),
    customerContact: customer.contact,
    purchaseOrder: order.purchaseOrder,
    serial: item.serial,
    construction: item.construction,
    protection: item.protection,
    material: item.material ?? "",
    receivedOn,
    condition: item.condition,
    remark: "",
  };
};
