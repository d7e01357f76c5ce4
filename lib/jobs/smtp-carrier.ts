import { createTransport } from "nodemailer";
import type { Carrier } from "@/lib/operations/mail/deliver";
import { composeHeaders } from "./compose-headers";

const seconds = 1_000;

/** To the mail server of the address, one connection a message: a laboratory sends few. */
export const smtpCarrier = (smtpUrl: string, from: string): Carrier => {
  const transport = createTransport({
    url: smtpUrl,
    // A server that hangs must not hold a job for the library's two to ten minutes.
    connectionTimeout: 15 * seconds,
    greetingTimeout: 15 * seconds,
    socketTimeout: 60 * seconds,
  });
  return {
    kind: "smtp",
    carry: async (letter) => (await transport.sendMail(composeHeaders(letter, from))).response,
  };
};
