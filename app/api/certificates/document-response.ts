import { Refused } from "@/lib/domain/refusal";

const headers = { "cache-control": "private, no-store", "x-content-type-options": "nosniff" } as const;

const plain = (status: number, text: string, more: Readonly<Record<string, string>> = {}): Response =>
  new Response(`${text}\n`, {
    status,
    headers: { ...headers, "content-type": "text/plain; charset=utf-8", ...more },
  });

/** One answer for unknown, for somebody else's and for signed out: nobody learns which it was. */
export const notHere = (): Response => plain(404, "This document is not here.");

/** The number exists, the document will: a program that asked may come back by itself. */
export const beingMade = (message = "The documents are still being made. Try again in a minute."): Response =>
  plain(503, message, { "retry-after": "30" });

export const documentResponse = (
  bytes: Uint8Array,
  name: string,
  type: "application/pdf" | "application/xml" | "application/json" | "application/zip",
  disposition: "attachment" | "inline" = "attachment",
  more: Readonly<Record<string, string>> = {},
): Response =>
  new Response(Uint8Array.from(bytes), {
    headers: {
      ...headers,
      "content-type": type,
      "content-length": String(bytes.byteLength),
      "content-disposition": `${disposition}; filename="${name}"`,
      ...more,
    },
  });

/**
 * A file that came from outside, under a name as a header may carry it, whatever it was called there. Always saved, never
 * shown: it is not run within our address.
 */
export const foreignFileResponse = (bytes: Uint8Array, name: string, type: string): Response =>
  new Response(Uint8Array.from(bytes), {
    headers: {
      ...headers,
      "content-security-policy": "default-src 'none'; sandbox",
      "content-type": type,
      "content-length": String(bytes.byteLength),
      "content-disposition": `attachment; filename="${name.replaceAll(/[^\w.-]+/g, "_").slice(0, 120) || "document"}"`,
    },
  });

export const refusedResponse = (error: unknown): Response => {
  if (!(error instanceof Refused)) throw error;
  const { code, message } = error.refusal;
  if (code === "wrong-state") return beingMade(message);
  if (code === "rule") return plain(409, message);
  return notHere();
};
