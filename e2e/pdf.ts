import { readFileSync } from "node:fs";
import type { Download } from "@playwright/test";
import { pdfPages } from "@/tests/support/pdf-text";

/** The text of a downloaded PDF, white space made single. */
export const pdfText = async (download: Download): Promise<string> => {
  const pages = await pdfPages(new Uint8Array(readFileSync(await download.path())));
  return pages.join(" ").replace(/\s+/g, " ");
};
