import { loadOpenLink } from "@/lib/data/account/access-link-store";
import { inSnapshot } from "@/lib/data/in-scope";

/** What a link in a mail leads to, or null where it opens nothing. Whoever asks has no actor; it tells of their own link. */
export const accessLinkView = async (purpose: "invitation" | "reset", token: string, now: Date) => {
  const link = await inSnapshot({ kind: "laboratory" }, (tx) => loadOpenLink(tx, purpose, token, now));
  return link ? { name: link.name, email: link.email } : null;
};
