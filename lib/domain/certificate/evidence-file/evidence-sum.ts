/** Under this name the SHA-256 of the evidence file lies in a document that does not carry the file itself. */
export const evidenceSumName = "evidence.sha256";

/**
 * One line as `sha256sum -c` of GNU coreutils reads it (manual, "md5sum invocation": checksum, two spaces, file name): the
 * customer's own download can be held against the sealed document with a tool that is on any machine.
 */
export const evidenceSum = (certificate: string, sha256: string): string =>
  `${sha256}  ${certificate}-evidence.json\n`;

/** The SHA-256 that such a file names, lower-case hex; null where it is none. */
export const readEvidenceSum = (text: string): string | null =>
  /^(?<sum>[0-9a-f]{64}) {2}\S+-evidence\.json\n$/.exec(text)?.groups?.sum ?? null;
