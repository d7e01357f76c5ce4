/** One event as stored. Texts are hashed as they stand; nothing is parsed and written again. */
export type StoredEvent = {
  readonly sequence: bigint;
  /** Since 1970-01-01T00:00:00Z. */
  readonly atMicroseconds: bigint;
  readonly actorId: string;
  readonly action: string;
  readonly entityKind: string;
  readonly entityId: string;
  /** Canonical JSON text. */
  readonly payload: string;
  readonly previousHash: Uint8Array;
  readonly hash: Uint8Array;
};

/** Where a chain stands: its last event. The beginning is sequence 0 and 32 zero bytes. */
export type ChainHead = { readonly sequence: bigint; readonly hash: Uint8Array };

export const chainBeginning: ChainHead = { sequence: 0n, hash: new Uint8Array(32) };

/** SHA-256, from whoever has one (node:crypto, a browser): this layer imports none. */
export type Digest = (bytes: Uint8Array) => Uint8Array;

export type ChainBreak = {
  readonly sequence: bigint;
  readonly reason: "missing" | "not-linked" | "changed" | "cut" | "beyond-head";
};

const encoder = new TextEncoder();

const int64 = (value: bigint): Uint8Array => {
  const bytes = new Uint8Array(8);
  new DataView(bytes.buffer).setBigInt64(0, value);
  return bytes;
};

/**
 * What an event's hash is taken over: the previous hash, then each field with its length in bytes before it (int64,
 * big-endian), so that no text can move from one field to the next.
 */
export const encodeEvent = (event: StoredEvent): Uint8Array => {
  const fields = [
    int64(event.sequence),
    int64(event.atMicroseconds),
    ...[event.actorId, event.action, event.entityKind, event.entityId, event.payload].map((text) =>
      encoder.encode(text),
    ),
  ];
  const parts = [event.previousHash, ...fields.flatMap((field) => [int64(BigInt(field.byteLength)), field])];
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.byteLength, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.byteLength;
  }
  return bytes;
};

export const sameBytes = (a: Uint8Array, b: Uint8Array): boolean =>
  a.byteLength === b.byteLength && a.every((byte, index) => byte === b[index]);

/** The chain after this event, or how it breaks there. */
export const followChain = (
  head: ChainHead,
  event: StoredEvent,
  digest: Digest,
): { readonly ok: true; readonly head: ChainHead } | { readonly ok: false; readonly broken: ChainBreak } => {
  const expected = head.sequence + 1n;
  const broken = (reason: ChainBreak["reason"]) =>
    ({ ok: false, broken: { sequence: expected, reason } }) as const;
  if (event.sequence !== expected) return broken("missing");
  if (!sameBytes(event.previousHash, head.hash)) return broken("not-linked");
  if (!sameBytes(digest(encodeEvent(event)), event.hash)) return broken("changed");
  return { ok: true, head: { sequence: expected, hash: event.hash } };
};

/** Events have run out: do they end where the locked head says? */
export const closeChain = (reached: ChainHead, head: ChainHead): ChainBreak | null => {
  if (reached.sequence < head.sequence) return { sequence: reached.sequence + 1n, reason: "cut" };
  if (reached.sequence > head.sequence) return { sequence: head.sequence + 1n, reason: "beyond-head" };
  return sameBytes(reached.hash, head.hash) ? null : { sequence: head.sequence, reason: "changed" };
};

/** For the audit page and for `rederive`. */
export const describeBreak = ({ sequence, reason }: ChainBreak): string =>
  ({
    missing: `Event ${sequence} is missing.`,
    "not-linked": `Event ${sequence} does not follow from the event before it.`,
    changed: `Event ${sequence} is not as it was when it was appended.`,
    cut: `The log ends before event ${sequence}, but its head knows of it.`,
    "beyond-head": `Event ${sequence} stands after the head of the log.`,
  })[reason];
