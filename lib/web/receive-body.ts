import { createHash } from "node:crypto";

export type ReceivedBody =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly status: 400 | 411 | 413; readonly message: string };

const no = (status: 400 | 411 | 413, message: string): ReceivedBody => ({ ok: false, status, message });

/** Length as announced; null where the header is missing or no number. */
const announced = (request: Request): number | null => {
  const header = request.headers.get("content-length");
  return header !== null && /^\d{1,15}$/.test(header) ? Number(header) : null;
};

const collect = async (
  body: ReadableStream<Uint8Array>,
  limit: number,
): Promise<Uint8Array | "too-large"> => {
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = body.getReader();
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    length += next.value.byteLength;
    if (length > limit) {
      await reader.cancel();
      return "too-large";
    }
    parts.push(next.value);
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.byteLength;
  }
  return bytes;
};

/**
 * The body of an upload, whole or not at all. Too large is told from its announced length, before a byte is read; cut
 * on the way is told by comparing what came with the announced length and, where given, with its SHA-256 (hex).
 */
export const receiveBody = async (request: Request, limitBytes: number): Promise<ReceivedBody> => {
  const megabytes = Math.floor(limitBytes / 1_048_576);
  const tooLarge = `The file is larger than ${megabytes} MB. Split it by time and upload the parts in order. Nothing was stored.`;
  const length = announced(request);
  const sha256 = request.headers.get("x-content-sha256");
  if (length === null && sha256 === null)
    return no(
      411,
      "The upload does not say how long it is, so a cut could not be noticed. Nothing was stored.",
    );
  if (length !== null && length > limitBytes) return no(413, tooLarge);
  const cut =
    "The upload was cut on the way: what came is not what was sent. Nothing was stored; send it again.";
  if (!request.body) return no(400, cut);
  const bytes = await collect(request.body, limitBytes).catch(() => null);
  if (bytes === "too-large") return no(413, tooLarge);
  if (bytes === null || (length !== null && bytes.byteLength !== length)) return no(400, cut);
  if (sha256 !== null && createHash("sha256").update(bytes).digest("hex") !== sha256.toLowerCase())
    return no(400, cut);
  return { ok: true, bytes };
};
