type Acknowledged = {
  readonly contactName: string;
  readonly laboratory: string;
  readonly orderNumber: string;
  readonly promisedOn: string | null;
  readonly link: string;
};

/** Nothing confidential: the paper itself lies in the portal. */
export const acknowledgmentLetter = (
  order: Acknowledged,
): { readonly subject: string; readonly body: string } => ({
  subject: `We have accepted your order ${order.orderNumber}`,
  body: [
    `Dear ${order.contactName},`,
    "",
    `we have accepted your order ${order.orderNumber}.${order.promisedOn ? ` We expect to be finished on ${order.promisedOn}.` : ""}`,
    "",
    `The acknowledgment lies with the order, for whoever of you has an account: ${order.link}`,
    "",
    order.laboratory,
    "",
  ].join("\n"),
});
