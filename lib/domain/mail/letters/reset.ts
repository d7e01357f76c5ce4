/** Sent only where somebody signs in with this address; the page says the same to everybody. */
export const resetLetter = (facts: {
  readonly name: string;
  readonly laboratory: string;
  readonly link: string;
  readonly minutes: number;
}): { readonly subject: string; readonly body: string } => ({
  subject: `A new password at ${facts.laboratory}`,
  body: [
    `Dear ${facts.name},`,
    "",
    "somebody, we hope you, asked for a new password. Choose it here:",
    facts.link,
    "",
    `The link works once, for ${facts.minutes} minutes; an earlier one works no more. Your one-time codes stay as they are.`,
    "If it was not you, leave it alone: your password is as it was.",
    "",
  ].join("\n"),
});
