import { restForCustomer, type ShipmentRest } from "../../shipment/rest";

type Shipped = {
  readonly contactName: string;
  readonly laboratory: string;
  readonly orderNumber: string;
  readonly shipmentNumber: string;
  readonly sensors: number;
  /** So many of them were not measured and have no certificate. */
  readonly unmeasured: number;
  readonly carrier: string;
  readonly reference: string;
  readonly rest: ShipmentRest;
};

const unmeasuredText = (unmeasured: number, sensors: number): string => {
  if (sensors === 1) return "It was not measured and has no certificate.";
  if (unmeasured === sensors) return "None of them was measured, and they have no certificates.";
  return unmeasured === 1
    ? "1 of them was not measured and has no certificate."
    : `${unmeasured} of them were not measured and have no certificates.`;
};

/** Nothing confidential: how many, not which. */
export const shippedLetter = (parcel: Shipped): { readonly subject: string; readonly body: string } => {
  const many = `${parcel.sensors} ${parcel.sensors === 1 ? "sensor" : "sensors"}`;
  const how = parcel.carrier
    ? `went to ${parcel.carrier} today${parcel.reference ? `, reference ${parcel.reference}` : ""}`
    : "was handed over today";
  return {
    subject: `${many} of your order ${parcel.orderNumber} ${parcel.sensors === 1 ? "is" : "are"} on the way back`,
    body: [
      `Dear ${parcel.contactName},`,
      "",
      `our delivery ${parcel.shipmentNumber} with ${many} of your order ${parcel.orderNumber} ${how}.`,
      ...(parcel.unmeasured > 0 ? [unmeasuredText(parcel.unmeasured, parcel.sensors)] : []),
      restForCustomer(parcel.rest),
      "",
      parcel.laboratory,
      "",
    ].join("\n"),
  };
};
