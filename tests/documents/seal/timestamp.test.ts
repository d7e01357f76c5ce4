import { createHash } from "node:crypto";
import * as asn1js from "asn1js";
import { ContentInfo, PKIStatusInfo, TimeStampReq, TimeStampResp } from "pkijs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { copyOf } from "@/lib/documents/authenticity/bytes";
import { checkFile } from "@/lib/documents/authenticity/check-file";
import { composeCms, readCms } from "@/lib/documents/authenticity/cms";
import { readTimestampToken } from "@/lib/documents/authenticity/timestamp-token";
import type { SealKeyMaterial } from "@/lib/documents/seal/key-material";
import { ownAuthority } from "@/lib/documents/seal/own-authority";
import { sealPdf } from "@/lib/documents/seal/seal-pdf";
import { type Post, timestampClient } from "@/lib/documents/seal/timestamp-client";
import { hasOpenssl, withoutOpenssl } from "../../support/outside-tools";
import { temporaryFolder } from "../../support/temporary-folder";
import { startTimestampAuthority, type TimestampAuthority } from "../../support/timestamp-authority";
import { keyOf, listed, listOf, muchLater, sealedOn, unsealed } from "./sealed";

const imprintOf = (text: string) => createHash("sha256").update(text).digest();
const imprint = imprintOf("a signature");
const clock = () => sealedOn;

let key: SealKeyMaterial;
let authority: SealKeyMaterial;
beforeAll(async () => {
  [key, authority] = [await keyOf("seal"), await keyOf("timestamp")];
});

describe("the laboratory's own authority", () => {
  it("tells the time of an imprint, each time under another number", async () => {
    const stamp = ownAuthority(authority, () => new Date("2026-03-02T09:00:00.900Z"));
    const token = await stamp(imprint);
    expect(await readTimestampToken(token, imprint)).toMatchObject({
      ...{ genTime: sealedOn, fingerprint: authority.facts.fingerprint, isPlain: true, nonce: null },
    });
    expect(Buffer.from(await stamp(imprint)).equals(token)).toBe(false);
  });

  it("is not believed about something else, nor under a key that may not tell the time or was not in force", async () => {
    const token = await ownAuthority(authority, clock)(imprint);
    await expect(readTimestampToken(token, imprintOf("another"))).rejects.toThrow("of something else");
    await expect(readTimestampToken(await ownAuthority(key, clock)(imprint), imprint)).rejects.toThrow(
      "may not tell the time",
    );
    await expect(
      readTimestampToken(await ownAuthority(authority, () => muchLater)(imprint), imprint),
    ).rejects.toThrow("not in force");
    const cms = readCms(token, "it");
    const content = copyOf(cms.content ?? new Uint8Array());
    // The last second of the time it tells.
    const at = Buffer.from(content).lastIndexOf("Z") - 1;
    content[at] = (content[at] ?? 0) ^ 1;
    await expect(readTimestampToken(composeCms({ ...cms, content }), imprint)).rejects.toThrow(
      "does not hold",
    );
  });
});

describe("the client of an outside authority", () => {
  const answering = async (
    change: { readonly nonce?: boolean; readonly status?: number; readonly of?: Uint8Array } = {},
  ): Promise<Post> => {
    // Our own authority answers without the nonce of the question.
    const token = await ownAuthority(authority, clock)(change.of ?? imprint);
    return async (_, request) => {
      const { nonce, certReq } = TimeStampReq.fromBER(copyOf(request));
      expect([nonce?.valueBlock.valueHexView.length, certReq]).toEqual([8, true]);
      const status = new PKIStatusInfo({ status: change.status ?? 0 });
      const timeStampToken = ContentInfo.fromBER(token);
      return copyOf(new TimeStampResp({ status, timeStampToken }).toSchema().toBER());
    };
  };
  const ask = async (post: Post, at = clock) =>
    timestampClient("http://timestamp.example/", at, post)(imprint);

  it("refuses an answer to another question, a refusal, another imprint, and what is no answer", async () => {
    await expect(ask(await answering())).rejects.toThrow("answers another question");
    await expect(ask(await answering({ status: 2 }))).rejects.toThrow("refused (status 2)");
    await expect(ask(await answering({ of: imprintOf("another") }))).rejects.toThrow("of something else");
    await expect(ask(async () => new TextEncoder().encode("<html>"))).rejects.toThrow("TIMESTAMP_URL");
    await expect(ask(async () => copyOf(new asn1js.Null().toBER()))).rejects.toThrow(
      "not one of a timestamp",
    );
  });

  describe.skipIf(!hasOpenssl)(`with openssl's${hasOpenssl ? "" : `: ${withoutOpenssl}`}`, () => {
    const folder = temporaryFolder();
    let outside: TimestampAuthority;
    beforeAll(async () => {
      outside = await startTimestampAuthority(folder);
    });
    afterAll(() => outside?.close());
    const now = () => new Date();

    it("takes its token into the seal, which passes with the authority on the list and without", async () => {
      const fresh = await keyOf("seal", new Date());
      const timestamp = timestampClient(outside.url, now);
      const options = { at: new Date(), timestamp, reason: "Issued", location: "" };
      const file = await sealPdf(await unsealed(), fresh, options);
      const keys = listOf(listed(fresh, "seal"));
      const unknown = await checkFile(file, { keys, now: now() });
      expect([unknown.verdict, unknown.steps.find(({ key: step }) => step === "timestamp")?.state]).toEqual([
        "total-passed",
        "unknown",
      ]);
      const fingerprint = createHash("sha256").update(outside.certificate).digest("hex");
      const timing = { ...listed(fresh, "timestamp"), fingerprint, origin: "authority" } as const;
      const known = await checkFile(file, { keys: listOf(...keys.keys, timing), now: muchLater });
      expect(known.verdict).toBe("total-passed");
      expect(known.steps.find(({ key: step }) => step === "timestamp")?.state).toBe("passed");
    });

    it("refuses a time that is far from this machine's, and says so when nobody answers", async () => {
      const slow = () => new Date(Date.now() - 3_600_000);
      await expect(timestampClient(outside.url, slow)(imprint)).rejects.toThrow(
        /3[56]\d\d s from this machine/,
      );
      const nowhere = timestampClient("http://127.0.0.1:9/", now);
      await expect(nowhere(imprint)).rejects.toThrow("The timestamp authority (TIMESTAMP_URL)");
    });
  });
});
