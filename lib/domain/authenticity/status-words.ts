import type { PublicStanding, PublicStatus } from "./public-status";

/** The state of a certificate in words, with the shape that stands beside them. */
export type StatusWords = {
  readonly word: string;
  readonly sentence: string;
  readonly rows: readonly { readonly label: string; readonly value: string; readonly href?: string }[];
};

const words: Readonly<Record<PublicStanding, string>> = {
  valid: "Valid",
  amended: "Amended",
  replaced: "Replaced",
  withdrawn: "Withdrawn",
  pending: "Being made",
  unknown: "Unknown",
};

const sentenceOf = (status: PublicStatus): string => {
  const { standing, number, laboratory, issuedOn, endedOn, successor } = status;
  const next = successor?.number ?? "";
  switch (standing) {
    case "valid":
      return `${laboratory} issued ${number} on ${issuedOn}, and it stands as it was issued.`;
    case "amended":
      return `${number} was amended on ${endedOn}: ${next} now counts in its place. Do not rely on ${number} alone.`;
    case "replaced":
      return `${number} was replaced on ${endedOn}: ${next} now counts in its place. Do not rely on ${number}.`;
    case "withdrawn":
      return `${laboratory} withdrew ${number} on ${endedOn}. Do not rely on it; ask the laboratory what follows from that.`;
    case "pending":
      return `${number} is signed and its document is being made. A file you already hold is not the issued one; look again in some minutes.`;
    case "unknown":
      return `${laboratory} has issued nothing under this address. It may have been cut short or mistyped: read the code again, or drop the file below. If it stays unknown, ask the laboratory.`;
  }
};

const nothing = "—";

/** The same rows for every state: what a page shows differs in words, never in shape or length. */
export const statusWords = (status: PublicStatus): StatusWords => ({
  word: words[status.standing],
  sentence: sentenceOf(status),
  rows: [
    { label: "Certificate", value: status.number || nothing },
    { label: "Laboratory", value: status.laboratory || nothing },
    { label: "Issued on", value: status.issuedOn || nothing },
    { label: "Serial of the item", value: status.serialEnd ? `ends in ${status.serialEnd}` : nothing },
    { label: "Followed by", value: status.successor?.number ?? nothing, href: status.successor?.address },
    {
      label: "Takes the place of",
      value: status.predecessor?.number ?? nothing,
      href: status.predecessor?.address,
    },
  ],
});
