type Letter = { readonly subject: string; readonly body: string };
type Facts = {
  readonly laboratory: string;
  readonly contactName: string;
  readonly number: string;
  readonly link: string;
};

/** ISO/IEC 17025 7.9.5: received; who looks into it did not do the work it is about. */
export const complaintReceivedLetter = ({ laboratory, contactName, number, link }: Facts): Letter => ({
  subject: `We have your complaint, ${number}`,
  body: [
    `Dear ${contactName},`,
    "",
    `we have received your complaint; it has the number ${number}. Somebody who did not do the work will look into it, and you will hear from us what came of it.`,
    "",
    link,
    "",
    laboratory,
    "",
  ].join("\n"),
});

/** The answer itself is in the portal: nothing of what was complained of is in a mail. */
export const complaintAnsweredLetter = ({ laboratory, contactName, number, link }: Facts): Letter => ({
  subject: `Our answer to your complaint ${number}`,
  body: [
    `Dear ${contactName},`,
    "",
    `our answer to your complaint ${number} is in the portal:`,
    link,
    "",
    laboratory,
    "",
  ].join("\n"),
});
