import * as asn1js from "asn1js";
import { AlgorithmIdentifier, MessageImprint, TSTInfo } from "pkijs";
import { type Bytes, copyOf, sha256 } from "@/lib/documents/authenticity/bytes";
import { composeCms } from "@/lib/documents/authenticity/cms";
import { oid } from "@/lib/documents/authenticity/identifiers";
import type { SealKeyMaterial } from "./key-material";
import { signCms } from "./sign-cms";

/**
 * Under which promise the time is told. An arc of its own below 2.25 (ITU-T X.667: a UUID needs no registration): the
 * laboratory's clock, vouched for by nobody else.
 */
const policy = "2.25.263920443";

/**
 * The laboratory's own timestamp authority (RFC 3161), for where no other is set. It shows in which order things were
 * sealed and that a later change of the clock of one file went unnoticed by nobody; an outsider has only the laboratory's word for it.
 */
export const ownAuthority =
  (key: SealKeyMaterial, clock: () => Date) =>
  async (imprint: Uint8Array): Promise<Bytes> => {
    const info = new TSTInfo({
      version: 1,
      policy,
      messageImprint: new MessageImprint({
        hashAlgorithm: new AlgorithmIdentifier({ algorithmId: oid.sha256 }),
        hashedMessage: new asn1js.OctetString({ valueHex: copyOf(imprint) }),
      }),
      serialNumber: new asn1js.Integer({ valueHex: serial() }),
      // Whole seconds: DER of a fraction of a second is written in many ways.
      genTime: new Date(1000 * Math.floor(clock().getTime() / 1000)),
    });
    const content = copyOf(info.toSchema().toBER(false));
    return composeCms(
      await signCms({ contentType: oid.timestampInfo, content, digest: await sha256(content) }, key),
    );
  };

/** 16 random octets, positive: RFC 3161, 2.4.2 asks that no two are the same. */
function serial(): Bytes {
  const bytes = globalThis.crypto.getRandomValues(new Uint8Array(16));
  bytes[0] = ((bytes[0] ?? 0) & 0x3f) | 0x40;
  return bytes;
}
