import { createTransport } from "nodemailer";
import type { Carrier } from "@/lib/operations/mail/deliver";
import { composeHeaders } from "./compose-headers";

/** A server that hangs must not hold a job for the library's two to ten minutes. Milliseconds. */
const patience = { connectionTimeout: 15_000, greetingTimeout: 15_000, socketTimeout: 60_000 };

/**
 * The address with what we want unless it says otherwise (`?requireTLS=false`). In the address, because the library
 * drops every option that stands beside one.
 */
const withDefaults = (smtpUrl: string): string => {
  const address = new URL(smtpUrl);
  // A password goes over the wire encrypted, or not at all.
  const tls = address.protocol === "smtp:" && address.password !== "" ? { requireTLS: true } : {};
  for (const [name, value] of Object.entries({ ...patience, ...tls }))
    if (!address.searchParams.has(name)) address.searchParams.set(name, String(value));
  return address.href;
};

/** To the mail server of the address, one connection a message: a laboratory sends few. */
export const smtpCarrier = (smtpUrl: string, from: string): Carrier => {
  const transport = createTransport(withDefaults(smtpUrl));
  return {
    kind: "smtp",
    carry: async (letter) => (await transport.sendMail(composeHeaders(letter, from))).response,
  };
};
