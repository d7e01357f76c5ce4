type Letter = { readonly subject: string; readonly body: string };

/** The laboratory found something in its own work that may bear on what it gave to a customer, ISO/IEC 17025 7.10.1 e. */
export const nonconformityLetter = (facts: {
  readonly laboratory: string;
  readonly contactName: string;
  readonly orders: readonly string[];
  /** In plain words, as a person of the laboratory wrote them. */
  readonly text: string;
  readonly link: string;
}): Letter => ({
  subject: `About your ${facts.orders.length === 1 ? "order" : "orders"} ${facts.orders.join(", ")}`,
  body: [
    `Dear ${facts.contactName},`,
    "",
    `we have found something in our own work that concerns your ${facts.orders.length === 1 ? "order" : "orders"} ${facts.orders.join(", ")}.`,
    "",
    facts.text,
    "",
    "Your certificates are in the portal:",
    facts.link,
    "",
    "Please write to us if anything is unclear.",
    "",
    facts.laboratory,
    "",
  ].join("\n"),
});
