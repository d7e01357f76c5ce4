type Letter = { readonly subject: string; readonly body: string };
type Facts = { readonly name: string; readonly publicUrl: string };

const notice = (subject: string, { name, publicUrl }: Facts, lines: readonly string[]): Letter => ({
  subject,
  body: [
    `Dear ${name},`,
    "",
    ...lines,
    "",
    "If this was not you, set a new password and end the sessions you do not know:",
    `${publicUrl}/account`,
    "and tell the laboratory's quality manager.",
    "",
  ].join("\n"),
});

const minute = (at: Date): string => `${at.toISOString().slice(0, 16).replace("T", " ")} UTC`;

/** To the owner, never to whoever tries: the page they see says the same as for a wrong password. */
export const lockedNotice = ({ until, ...facts }: Facts & { readonly until: Date }): Letter =>
  notice("Your account is locked for a while", facts, [
    "Somebody typed a wrong password or code for your account several times in a row, so it is locked",
    `until ${minute(until)}. It opens again by itself. If you cannot wait, a new password opens it at once:`,
    `${facts.publicUrl}/reset`,
  ]);

export const recoveryNotice = ({ left, ...facts }: Facts & { readonly left: number }): Letter =>
  notice("A recovery code of yours was used", facts, [
    "One of your recovery codes was used to sign in instead of a one-time code.",
    left === 0
      ? "None is left: set one-time codes up again, which makes new ones."
      : `${left} ${left === 1 ? "is" : "are"} left.`,
  ]);

export const passwordNotice = (facts: Facts): Letter =>
  notice("Your password was changed", facts, [
    "A new password was set for your account by the link that we sent you. Every session of yours has ended.",
  ]);

export const factorNotice = ({
  change,
  ...facts
}: Facts & { readonly change: "set-up" | "ended" | "reset" }): Letter =>
  notice("One-time codes of your account", facts, [
    {
      "set-up": "One-time codes were set up for your account; each sign-in asks for one from now on.",
      ended: "One-time codes were given up for your account; the password alone opens it from now on.",
      reset:
        "The quality manager took the one-time codes of your account away; the password alone opens it until you set them up again.",
    }[change],
  ]);
