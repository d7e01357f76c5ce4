/** Whoever holds the link chooses a password and is in: it goes to the invited address and nowhere else. */
export const invitationLetter = (facts: {
  readonly name: string;
  readonly laboratory: string;
  readonly link: string;
  readonly hours: number;
}): { readonly subject: string; readonly body: string } => ({
  subject: `You are invited by ${facts.laboratory}`,
  body: [
    `Dear ${facts.name},`,
    "",
    `you are invited to sign in at ${facts.laboratory}. Choose your password here:`,
    facts.link,
    "",
    `The link works once, for ${facts.hours} hours. Keep it to yourself: whoever opens it first is you.`,
    "If you expected nothing of the kind, leave it alone; nothing happens.",
    "",
  ].join("\n"),
});
