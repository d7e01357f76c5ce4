import { restForCustomer, type ShipmentRest } from "../../shipment/rest";

type Shipped = {
  readonly contactName: string;
  readonly laboratory: string;
  readonly orderNumber: string;
  readonly shipmentNumber: string;
  readonly sensors: number;
  readonly carrier: string;
  readonly reference: string;
  readonly rest: ShipmentRest;
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
      restForCustomer(parcel.rest),
      "",
      parcel.laboratory,
      "",
    ].join("\n"),
  };
};
