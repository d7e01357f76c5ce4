import { readAddress } from "@/lib/domain/authenticity/token";
import { isContentReached, notReached } from "./findings";
import { type Rule, ruled } from "./ruling";
import { sameLog } from "./same-log";
import { samePaper } from "./same-paper";

/** Which document: the one whose page the paper leads to? */
const sameDocument: Rule = (file, { token }) => {
  if (token === null || !file.content) return null;
  const own = readAddress(file.content.authenticity?.address ?? "")?.token;
  const label = "The document of this page";
  if (own === undefined)
    return ruled(
      "document",
      label,
      "unknown",
      "The file names no page: whether it is this one cannot be told.",
    );
  if (own === token) return ruled("document", label, "passed", "The file names this page as its own.");
  const text = `The file is ${file.content.number}, which has another page than the one you opened.`;
  return ruled("document", label, "failed", text, {
    kind: "bad",
    title: "This is another document",
    reason: `${text} Drop the file that belongs to your paper.`,
  });
};

/** A look-alike would serve a page and a list of keys of its own: the address in the document tells. */
const sameHost: Rule = (file, { host }) => {
  const address = file.content?.authenticity?.address;
  if (host === null || address === undefined) return null;
  const named = readAddress(address)?.host;
  const label = "Checked where the document says";
  if (named === host)
    return ruled("host", label, "passed", `The document is to be checked at ${named}, and this is ${host}.`);
  const text = `This page is served by ${host}, but the document is to be checked at ${named ?? "an address that cannot be read"}.`;
  return ruled("host", label, "failed", text, {
    kind: "look",
    title: "This is not the place to check it",
    reason: `${text} Another host can show whatever it likes: go to the laboratory’s own address.`,
  });
};

const sameCopy: Rule = (_file, { fileSha256, status }) => {
  if (!status?.fileSha256) return null;
  const label = "The very file that was issued";
  if (fileSha256 === status.fileSha256)
    return ruled("copy", label, "passed", "Byte for byte the file that the laboratory keeps.");
  return ruled("copy", label, "failed", "The laboratory keeps other bytes under this address.", {
    kind: "look",
    title: "Not the file that was issued",
    reason: "The laboratory keeps another file under this address. Ask it for the issued one.",
  });
};

const standing: Rule = (file, { status, host }) => {
  const label = "Standing at the laboratory";
  const number = file.content?.number ?? "It";
  const but = (word: string): string =>
    file.verdict === "total-passed" ? `Genuine, but ${word}` : `Not in force: ${word}`;
  if (status === null) {
    if (!isContentReached(file)) return ruled("standing", label, "skipped", notReached);
    const text =
      host === null
        ? "Whether it was replaced or withdrawn since cannot be known offline. Ask at the address in the document."
        : "The laboratory was not asked whether the document still stands: it names no page, or there was no answer.";
    return ruled("standing", label, "unknown", text);
  }
  switch (status.standing) {
    case "valid":
      return ruled("standing", label, "passed", `${number} stands as it was issued.`);
    case "amended":
    case "replaced": {
      const next = status.successor ? ` ${status.successor.number} counts in its place.` : "";
      const text = `${number} was ${status.standing} on ${status.endedOn}.${next}`;
      const title = but(status.standing);
      return ruled("standing", label, "failed", text, { kind: "bad", title, reason: text });
    }
    case "withdrawn": {
      const text = `${number} was withdrawn on ${status.endedOn}. Do not rely on it.`;
      return ruled("standing", label, "failed", text, { kind: "bad", title: but("withdrawn"), reason: text });
    }
    case "pending":
    case "unknown": {
      const text =
        status.standing === "pending"
          ? `${status.laboratory} has not issued ${number} yet.`
          : `${status.laboratory} has issued nothing under the address in this file.`;
      return ruled("standing", label, "failed", text, {
        kind: "look",
        title: "The laboratory does not know this document",
        reason: `${text} Ask the laboratory before you rely on it.`,
      });
    }
  }
};

/** What is looked at beside the file itself, in the order in which it is shown. */
export const aroundRules: readonly Rule[] = [sameDocument, samePaper, sameHost, standing, sameCopy, sameLog];
