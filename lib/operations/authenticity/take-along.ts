import { offlinePage } from "@/lib/documents/authenticity/offline/offline-page";
import { keptScript } from "@/lib/documents/offline-check/kept-script";
import type { KeyList } from "@/lib/domain/seal/key-list";

/** The check as one file to keep; null where its script was not made, as while the pages are being edited. */
export const takeAlong = async (keys: KeyList): Promise<string | null> => {
  const script = await keptScript();
  return script === null ? null : offlinePage(script, keys);
};
