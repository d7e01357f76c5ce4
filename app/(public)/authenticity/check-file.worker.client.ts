"use client";
import { checkFile, type Given } from "@/lib/documents/authenticity/check-file";

/** Beside the page, which goes on answering while a large file is taken apart. */
self.addEventListener("message", async ({ data }: MessageEvent<{ bytes: Uint8Array; given: Given }>) => {
  self.postMessage(await checkFile(data.bytes, data.given));
});
