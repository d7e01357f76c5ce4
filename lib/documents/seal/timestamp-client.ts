import * as asn1js from "asn1js";
import { AlgorithmIdentifier, MessageImprint, PKIStatus, TimeStampReq, TimeStampResp } from "pkijs";
import { Malformed } from "@/lib/documents/authenticity/asn1";
import { type Bytes, copyOf, isSame } from "@/lib/documents/authenticity/bytes";
import { oid } from "@/lib/documents/authenticity/identifiers";
import { readTimestampToken } from "@/lib/documents/authenticity/timestamp-token";

const longestWait = 20_000;

/** Clocks differ; a time further off than this is a wrong clock on one side or the other. */
const largestDifferenceSeconds = 300;

/** Sends a request to the authority and gives its answer's bytes. */
export type Post = (url: string, request: Uint8Array<ArrayBuffer>) => Promise<Uint8Array>;

/** RFC 3161, 3.4: over HTTP. */
const post: Post = async (url, request) => {
  const answer = await fetch(url, {
    method: "POST",
    headers: { "Content-Type": "application/timestamp-query", Accept: "application/timestamp-reply" },
    body: request,
    redirect: "error",
    signal: AbortSignal.timeout(longestWait),
  });
  if (!answer.ok) throw new Error(`it answered with HTTP ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
};

/**
 * Asks a timestamp authority for a token and takes it only if it is an answer to this question: granted, of this
 * imprint, with this nonce, signed by a certificate that it carries and that may tell the time, at about our time.
 */
export const timestampClient =
  (url: string, clock: () => Date, send: Post = post) =>
  async (imprint: Uint8Array): Promise<Bytes> => {
    const nonce = new asn1js.Integer({ valueHex: randomNonce() });
    try {
      const answer = await send(url, requestOf(imprint, nonce));
      const token = tokenOf(answer);
      const { genTime, nonce: answered } = await readTimestampToken(token, imprint);
      if (answered === null || !isSame(answered, copyOf(nonce.toBER(false))))
        throw new Malformed("the timestamp answers another question");
      const difference = Math.abs(genTime.getTime() - clock().getTime()) / 1000;
      if (difference > largestDifferenceSeconds)
        throw new Malformed(`it tells a time that is ${Math.round(difference)} s from this machine's`);
      return token;
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      throw new Error(`The timestamp authority (TIMESTAMP_URL) gave no timestamp that can be used: ${why}`);
    }
  };

/** 8 octets, positive. */
function randomNonce(): Bytes {
  const bytes = globalThis.crypto.getRandomValues(new Uint8Array(8));
  bytes[0] = ((bytes[0] ?? 0) & 0x3f) | 0x40;
  return bytes;
}

function requestOf(imprint: Uint8Array, nonce: asn1js.Integer): Bytes {
  const request = new TimeStampReq({
    version: 1,
    messageImprint: new MessageImprint({
      hashAlgorithm: new AlgorithmIdentifier({ algorithmId: oid.sha256 }),
      hashedMessage: new asn1js.OctetString({ valueHex: copyOf(imprint) }),
    }),
    nonce,
    certReq: true,
  });
  return copyOf(request.toSchema().toBER(false));
}

function tokenOf(answer: Uint8Array): Bytes {
  let response: TimeStampResp;
  try {
    response = TimeStampResp.fromBER(copyOf(answer));
  } catch {
    throw new Malformed("its answer is not one of a timestamp authority");
  }
  const { status, timeStampToken } = response;
  const isGranted = status.status === PKIStatus.granted || status.status === PKIStatus.grantedWithMods;
  if (!isGranted || timeStampToken === undefined) {
    const told = (status.statusStrings ?? []).map(({ valueBlock }) => valueBlock.value).join(" ");
    throw new Malformed(`it refused (status ${status.status})${told ? `: ${told}` : ""}`);
  }
  return copyOf(timeStampToken.toSchema().toBER(false));
}
