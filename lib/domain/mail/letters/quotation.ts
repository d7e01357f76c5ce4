type Offer = {
  readonly contactName: string;
  readonly laboratory: string;
  readonly orderNumber: string;
  readonly quotationNumber: string;
  readonly validUntil: string;
  readonly link: string;
};

/** Nothing confidential: no sensors, no prices. The link opens the offer. */
export const quotationLetter = (offer: Offer): { readonly subject: string; readonly body: string } => ({
  subject: `Our offer ${offer.quotationNumber} for your order ${offer.orderNumber}`,
  body: [
    `Dear ${offer.contactName},`,
    "",
    `our offer ${offer.quotationNumber} for your order ${offer.orderNumber} is ready. Please read it and say whether you agree:`,
    "",
    offer.link,
    "",
    `The page shows method, points, decision rule and price, and the offer as a PDF. No account is needed. The link is for you: whoever has it can answer in your name. It is open until ${offer.validUntil}.`,
    "",
    offer.laboratory,
    "",
  ].join("\n"),
});
