import { type PaperHash, readPaperHash } from "./paper-hash";
import { readAddress } from "./token";

/**
 * What somebody typed from paper: the whole code, what stands behind # in it, or the content hash printed at the foot.
 * The printed address ends before #: typed alone it names the document, and is no code that was cut.
 */
export const readTypedHash = (typed: string): PaperHash => {
  const text = typed.replace(/\s+/g, "");
  const at = text.indexOf("#");
  const hash = readPaperHash(text.slice(at + 1));
  if (hash.kind === "given") return hash;
  const before = at < 0 ? text : text.slice(0, at);
  const address = readAddress(before.includes("://") ? before : `https://${before}`);
  return address && hash.kind === (at < 0 ? "broken" : "absent")
    ? { kind: "address", token: address.token }
    : hash;
};
