"use client";
import type { Given } from "@/lib/documents/authenticity/check-file";
import type { FileVerdict } from "@/lib/documents/authenticity/verdict";

const inWorker = (bytes: Uint8Array, given: Given): Promise<FileVerdict> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./check-file.worker.client.ts", import.meta.url), { type: "module" });
    const end = (settle: () => void) => {
      worker.terminate();
      settle();
    };
    worker.addEventListener("message", ({ data }: MessageEvent<FileVerdict>) => end(() => resolve(data)));
    worker.addEventListener("error", () => end(() => reject(new Error("no worker"))));
    worker.postMessage({ bytes, given });
  });

/** In a worker; where a browser gives none, in the page itself, which then stands still for a moment. */
export const checkBeside = (bytes: Uint8Array, given: Given): Promise<FileVerdict> =>
  inWorker(bytes, given).catch(async () => {
    const { checkFile } = await import("@/lib/documents/authenticity/check-file");
    return checkFile(bytes, given);
  });
