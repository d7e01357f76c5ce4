import type { CertificateContent } from "@/lib/domain/certificate/content";
import { type Said, together, type Words } from "./words";

/**
 * 7.8.8.1: what an amendment says otherwise, a line a change: "Serial number: was “4711”, now “4712”". What it was and is
 * stands as it is, in every language.
 */
export const changesSaid = (
  { amends }: Pick<CertificateContent, "amends">,
  { caption, sentence }: Words,
): readonly Said[] => {
  const quoted = (text: string): Said => (text === "" ? caption("amends.nothing") : [`“${text}”`]);
  return (amends?.changes ?? []).map(({ what, was, now }) =>
    together(
      "",
      ...[sentence(what), [": "] as const, caption("amends.was"), [" "] as const, quoted(was)],
      ...[[", "] as const, caption("amends.now"), [" "] as const, quoted(now)],
    ),
  );
};
