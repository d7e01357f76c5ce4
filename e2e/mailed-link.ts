import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect } from "./fixtures";

/** A body as people read it: soft line ends and coded letters of quoted-printable undone. */
const decode = (text: string): string =>
  text
    .replace(/=\r?\n/g, "")
    .replace(/=([0-9A-F]{2})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

const messages = (): readonly string[] => {
  const folder = process.env.E2E_MAIL_FOLDER ?? "";
  return readdirSync(folder)
    .filter((name) => name.endsWith(".eml"))
    .toSorted()
    .map((name) => decode(readFileSync(path.join(folder, name), "utf8")));
};

/** The path of a link from the newest message that names this and has such a link; waits for the worker to write it. */
export const mailedLink = async (
  named: string,
  kind: "answer" | "agree" | "invitation" | "reset",
): Promise<string> => {
  const link = new RegExp(`https?://[^/\\s]+(/${kind}/[A-Za-z0-9_-]+)`);
  const find = () => messages().findLast((text) => text.includes(named) && link.test(text));
  await expect.poll(() => find() !== undefined).toBe(true);
  return link.exec(find() ?? "")?.[1] ?? "";
};
