/** A question waits for the customer. Nothing of the sensor or of what was found is in it: the page behind the link says it. */
export const questionLetter = (facts: {
  readonly laboratory: string;
  readonly orderNumber: string;
  readonly contactName: string;
  readonly link: string;
  /** YYYY-MM-DD */
  readonly expiresOn: string;
}): { readonly subject: string; readonly body: string } => ({
  subject: `A question about your order ${facts.orderNumber}`,
  body: [
    `Dear ${facts.contactName},`,
    "",
    `Before we go on with your order ${facts.orderNumber} we need a word from you. Part of the work waits until then.`,
    "",
    "Read the question and answer it here:",
    facts.link,
    "",
    `The link works until ${facts.expiresOn}, for one answer, and needs no password; please pass it on only to whoever may answer for you. The question is in the portal as well.`,
    "",
    facts.laboratory,
    "",
  ].join("\n"),
});
