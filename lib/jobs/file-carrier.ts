import { mkdir, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { createTransport } from "nodemailer";
import type { Carrier } from "@/lib/operations/mail/deliver";
import { composeHeaders } from "./compose-headers";

/**
 * Where no mail server is set: each message as a file that any mail program opens. The name is the message's, so that
 * a second delivery replaces the first; it appears whole or not at all, and only its owner may read it.
 */
export const fileCarrier = (folder: string, from: string): Carrier => {
  const compose = createTransport({ streamTransport: true, buffer: true, newline: "windows" });
  return {
    kind: "file",
    carry: async (letter) => {
      const { message } = await compose.sendMail(composeHeaders(letter, from));
      const written = letter.writtenAt.toISOString().replaceAll(":", "-").slice(0, 19);
      const name = `${written}-${letter.id}.eml`;
      const partial = path.join(folder, `.${name}.partial`);
      await mkdir(folder, { recursive: true, mode: 0o700 });
      try {
        // A buffer, as asked for above; the library's type leaves it open.
        await writeFile(partial, message as Buffer, { mode: 0o600, flush: true });
        await rename(partial, path.join(folder, name));
      } catch (error) {
        await rm(partial, { force: true });
        throw error;
      }
      return name;
    },
  };
};
