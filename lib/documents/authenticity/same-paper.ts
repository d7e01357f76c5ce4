import { type PaperHash, readPaperHash } from "@/lib/domain/authenticity/paper-hash";
import { readAddress } from "@/lib/domain/authenticity/token";
import { isContentReached, notReached } from "./findings";
import { type Rule, type Ruled, ruled } from "./ruling";
import type { FileVerdict } from "./verdict";

const label = "The code on paper";
const hashIsAt =
  "The hash stands behind # in the code; the Content SHA-256 printed at the foot is the same and may be typed instead.";

const byAddress = (own: string | undefined, token: string): Ruled => {
  if (own === token || own === undefined)
    return ruled(
      "paper",
      label,
      "skipped",
      `${own ? "The address names the document in the file" : "The address names a document"}, and says nothing of its content: paper and file were not compared. ${hashIsAt}`,
    );
  const text = "The address that was typed names another document than the file.";
  return ruled("paper", label, "failed", text, {
    kind: "look",
    title: "The address names another document",
    reason: `${text} Type it again from the paper; if it stays so, the file does not belong to this paper.`,
  });
};

const byHash = (file: FileVerdict, hex: string, own: string | undefined): Ruled => {
  if (!isContentReached(file)) return ruled("paper", label, "skipped", notReached);
  if (file.contentHash === null)
    return ruled("paper", label, "unknown", "The file carries no content to compare with.");
  if (file.contentHash === hex)
    return ruled("paper", label, "passed", "Paper and file carry the same content hash.");
  // The end of the address has as many signs as a hash: whoever types that alone has typed no other hash.
  const ofAddress: PaperHash = readPaperHash(own ?? "");
  if (own !== undefined && ofAddress.kind === "given" && ofAddress.hex === hex) return byAddress(own, own);
  const text = "The paper carries another content hash than the file: they do not say the same.";
  return ruled("paper", label, "failed", text, {
    kind: "bad",
    title: "Paper and file do not belong together",
    reason: `${text} Rely on neither until the laboratory has told you why.`,
  });
};

/** The content the paper was printed with, and the content in the file. */
export const samePaper: Rule = (file, { paperHash }) => {
  const own = readAddress(file.content?.authenticity?.address ?? "")?.token;
  switch (paperHash.kind) {
    case "absent":
      return ruled(
        "paper",
        label,
        "skipped",
        "No hash came with the address: paper and file were not compared.",
      );
    case "address":
      return byAddress(own, paperHash.token);
    case "broken": {
      const text = "What was read or typed is no whole hash: it was cut, changed or mistyped.";
      return ruled("paper", label, "unknown", text, {
        kind: "look",
        title: "The code on your paper cannot be read",
        reason: `${text} Read it again from the paper. ${hashIsAt}`,
      });
    }
    case "given":
      return byHash(file, paperHash.hex, own);
  }
};
